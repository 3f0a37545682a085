/**
 * Every word of the hand-over sheet in one language. A further language is one more file that fills this type, its
 * names and its line in `languages.ts`.
 */
import type { CauseId, Place } from '../../../diagnosis/finding.ts';
import type { PhaseKind, ProcedureKind } from '../../../recording/recording.ts';
import type { LayoutId } from '../../../system/car.ts';
import type { HandOverCheck, HandOverCode, HandOverComplaint } from '../hand-over.ts';
import type { NumberStyle } from '../quantities.ts';

/** Names of things: what they are called, without a sentence around them. */
export interface Names {
  readonly numbers: NumberStyle;
  readonly or: string;
  readonly and: string;
  readonly causes: Readonly<Record<CauseId, { readonly name: string; readonly plain: string }>>;
  readonly places: Readonly<Record<Place, string>>;
  readonly phases: Readonly<Record<PhaseKind, string>>;
  readonly procedures: Readonly<Record<ProcedureKind | 'unknown', string>>;
  readonly layouts: Readonly<Record<LayoutId, string>>;
  readonly complaints: Readonly<Record<HandOverComplaint, string>>;
  readonly codeStatus: Readonly<Record<HandOverCode['status'], string>>;
  readonly strength: Readonly<Record<HandOverCheck['strength'], string>>;
  readonly filler: Readonly<Record<'capped' | 'capless', string>>;
  readonly codeMeanings: Readonly<Record<string, string>>;
  readonly otherCode: string;
  readonly certainty: (probability: number) => string;
  /** Natural log of the ratio against the best rival, in words. */
  readonly evidence: (logEvidence: number) => string;
}

/** Headings and labels. */
export interface Labels {
  readonly customerTitle: string;
  readonly evidenceTitle: string;
  readonly customerSubtitle: (car: string, date: string) => string;
  readonly evidenceSubtitle: (car: string, date: string) => string;
  readonly fileTitle: (job: number, car: string) => string;
  readonly jobNumber: (job: number) => string;
  readonly invented: string;
  readonly pageOf: (page: number, pages: number) => string;
  readonly sections: Readonly<
    Record<
      | 'complaint'
      | 'found'
      | 'done'
      | 'proven'
      | 'notVerified'
      | 'lamp'
      | 'before'
      | 'job'
      | 'recordings'
      | 'sizes'
      | 'causes'
      | 'evidence'
      | 'checks'
      | 'repairs'
      | 'proof'
      | 'codes'
      | 'conditions'
      | 'notes'
      | 'files'
      | 'origin'
      | 'law'
      | 'signatures',
      string
    >
  >;
  readonly facts: Readonly<
    Record<
      | 'job'
      | 'opened'
      | 'made'
      | 'technician'
      | 'shop'
      | 'owner'
      | 'vehicle'
      | 'registration'
      | 'vin'
      | 'modelYear'
      | 'odometer'
      | 'layout'
      | 'filler'
      | 'tank'
      | 'sensor'
      | 'reid'
      | 'complaintKinds'
      | 'complaintWords'
      | 'procedure'
      | 'length'
      | 'level'
      | 'ambient'
      | 'fuel'
      | 'air'
      | 'received'
      | 'phasesFrom'
      | 'program'
      | 'findingBefore'
      | 'findingAfter'
      | 'file'
      | 'time'
      | 'who'
      | 'check'
      | 'result'
      | 'speaks'
      | 'repair'
      | 'part'
      | 'partNumber'
      | 'price'
      | 'minutes'
      | 'code'
      | 'status'
      | 'meaning'
      | 'freezeFrame'
      | 'before'
      | 'after'
      | 'phase'
      | 'says'
      | 'logRatio'
      | 'condition'
      | 'alike'
      | 'exceeds',
      string
    >
  >;
  readonly figure: {
    readonly purge: string;
    readonly vent: string;
    readonly purgeUpTo: (percent: string) => string;
    readonly before: string;
    readonly after: string;
    readonly tankPressure: string;
    readonly pumpPressure: string;
    readonly traceTitle: (pressure: string, label: string) => string;
    readonly traceDescription: (facts: {
      pressure: string;
      length: string;
      low: string;
      high: string;
      phases: string;
    }) => string;
    readonly traceKey: (model: string | null, rival: string | null) => string;
    readonly hidden: string;
    readonly sameAxes: string;
    readonly beforeAfterTitle: (pressure: string) => string;
    readonly beforeAfterDescription: (
      pressure: string,
      before: { lowest: string; last: string },
      after: { lowest: string; last: string },
    ) => string;
    readonly beforeAfterKey: string;
    /** How the later recording was moved along the axis. */
    readonly moved: (by: string, isLater: boolean, phase: string) => string;
    readonly sizesTitle: string;
    readonly sizesDescription: (rows: string, limits: string) => string;
    readonly sizesKey: string;
  };
  readonly notGiven: string;
  readonly photo: (fileName: string) => string;
  readonly notRecorded: string;
  readonly notMeasured: string;
  readonly foundByProgram: string;
  readonly byHand: string;
  readonly everythingElse: string;
  readonly otherCauses: (count: number) => string;
  readonly speaksFor: string;
  readonly speaksAgainst: string;
  readonly reasonsFor: string;
  readonly reasonsAgainst: string;
  readonly limitsOfFinding: string;
  readonly nextRecording: string;
  readonly warnings: string;
  readonly pairs: string;
  readonly together: (a: string, b: string, percent: string) => string;
  readonly samples: (count: number) => string;
  readonly bytes: (count: number) => string;
  readonly minutes: (count: string) => string;
  readonly kilometres: (count: string) => string;
  readonly signatures: readonly string[];
}

/** Whole sentences; the arguments are set in the language already. */
export interface Sentences {
  readonly couldNotTell: string;
  readonly noFaultSeen: string;
  readonly noFaultButSmall: string;
  readonly foundFault: (probability: number, plain: string) => string;
  readonly noFindingYet: string;
  readonly holeSize: (size: string) => string;
  readonly holeBound: (diameter: string) => string;
  readonly sizeNotes: {
    readonly beside: (cause: string) => string;
    readonly weighed: (cause: string, own: string) => string;
  };
  readonly limitExceeded: (limit: string, percent: string) => string;
  readonly howSure: (percent: string, certainty: string) => string;
  readonly noComplaint: string;
  readonly nothingDone: string;
  readonly repairDone: (date: string, what: string) => string;
  readonly repairParts: (parts: string, more: number) => string;
  readonly inEvidence: string;
  readonly checksDone: (count: number) => string;
  readonly provenSize: (before: string, after: string) => string;
  readonly provenNoSizeAfter: (before: string) => string;
  /** The verdict of the figures alone, where the one taken by the technician is another. */
  readonly figuresDiffer: (verdict: string) => string;
  readonly selfTestSince: (state: string) => string;
  readonly noRepairToProve: string;
  readonly diameterConvention: string;
  readonly limitsAreMarks: (marks: string) => string;
  /** Where a reference size comes from; one that the shop wrote itself stays as written. */
  readonly limitSource: (source: string) => string;
  /** Name of a value of the bus; what was typed stays as it is. */
  readonly frameName: (name: string) => string;
  readonly lamp: readonly string[];
  readonly monitor: Readonly<Record<LayoutId, string>>;
  readonly monitorUnknownLayout: string;
  readonly howToHelp: string;
  readonly permanentCodes: string;
  readonly cautionLead: string;
  readonly ownerCautions: readonly string[];
  readonly cautions: readonly string[];
  readonly sealedTankCaution: string;
  readonly deferral: readonly string[];
  readonly open: {
    readonly noRepair: string;
    readonly noFindingAfter: string;
    readonly outdated: string;
    readonly noProof: string;
    readonly notHeld: string;
    readonly codesNotReadAgain: string;
    readonly codesRemain: (codes: string) => string;
    readonly selfTest: string;
    readonly oneOrSeveral: string;
    readonly rival: (cause: string, percent: string) => string;
    readonly alike: (places: string) => string;
    readonly stillFault: (cause: string, percent: string) => string;
    readonly smallHole: (diameter: string, percent: string) => string;
    readonly asleep: string;
  };
  readonly noCodes: string;
  readonly codesAsRead: string;
  readonly codeAbsent: string;
  readonly codesAfterNotRead: string;
  readonly noRecordings: string;
  readonly noModel: string;
  readonly noSize: string;
  readonly noChecks: string;
  readonly noRepairs: string;
  readonly meantToRemove: (causes: string) => string;
  readonly silentPhases: string;
  readonly findingLine: (date: string, program: string, recordings: string, outdated: boolean) => string;
}

export interface HandOverWords extends Names, Labels, Sentences {
  /**
   * A sentence of the finding or of the reader of recordings, which speak English, in this language; one that is not
   * known is handed on as it is, marked.
   */
  readonly machineText: (english: string) => string;
  /** YYYY-MM-DD as people write it. */
  readonly day: (iso: string) => string;
}
