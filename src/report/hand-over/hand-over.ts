/**
 * Everything that a hand-over sheet shows, as plain data: facts of the job, recordings, findings, checks, repairs and
 * proof. Page and PDF are made from this and from nothing else.
 */
import type { Proof } from '../../checks/proof/proof.ts';
import type { CauseId, Finding, Overlay } from '../../diagnosis/finding.ts';
import type { Inspection, InspectionRule } from '../../readiness/inspection.ts';
import type { DrivePlan } from '../../readiness/plan.ts';
import type { CarsWord } from '../../readiness/slip.ts';
import type { Phase, ProcedureKind } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import type { Commands } from '../command-lanes.ts';
import type { Limit } from '../limits.ts';
import type { SheetRecording } from '../sheet.ts';

export const HAND_OVER_LANGUAGES = ['en', 'de'] as const;
export type HandOverLanguage = (typeof HAND_OVER_LANGUAGES)[number];

export const HAND_OVER_PARTS = ['customer', 'evidence', 'inspection'] as const;
export type HandOverPart = (typeof HAND_OVER_PARTS)[number];

/** What an owner complains of, beside a lit lamp and codes. */
export const HAND_OVER_COMPLAINTS = [
  'slow fill',
  'rough after fill',
  'smell',
  'not ready',
  'hiss or collapse',
] as const;
export type HandOverComplaint = (typeof HAND_OVER_COMPLAINTS)[number];

export interface HandOverUnits {
  readonly pressure: 'kPa' | 'inH2O' | 'mmHg' | 'psi';
  readonly length: 'mm' | 'in';
  readonly temperature: 'degC' | 'degF';
}

export interface HandOverCode {
  readonly code: string;
  readonly status: 'stored' | 'pending' | 'permanent';
  readonly freezeFrame?: readonly { readonly name: string; readonly value: string; readonly unit?: string }[];
}

/** The recorded pressure by which the procedure is judged, thinned to what a figure can show. */
export interface HandOverTrace {
  readonly timeS: readonly number[];
  readonly gaugePa: readonly number[];
}

export interface HandOverRecording {
  readonly label: string;
  readonly fileName: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly receivedAt: string;
  readonly taken: 'before-repair' | 'after-repair';
  readonly usedInFinding: boolean;
  readonly procedure: ProcedureKind | 'unknown';
  readonly durationS: number;
  readonly samples: number;
  readonly phases: readonly Phase[];
  readonly phasesByHand: boolean;
  readonly commands: Commands;
  readonly conditions: SheetRecording['conditions'];
  readonly quality: readonly string[];
  readonly trace: HandOverTrace | null;
  /** The first cause of the finding, and what it is compared with, over this recording. */
  readonly model: Overlay | null;
  readonly rival: Overlay | null;
}

export interface HandOverFinding {
  readonly finding: Finding;
  readonly program: string;
  readonly madeAt: string;
  readonly outdated: boolean;
  /** Labels of the recordings that it was made from, in the finding's order. */
  readonly recordings: readonly string[];
}

export interface HandOverCheck {
  readonly at: string;
  readonly by: string;
  readonly what: string;
  readonly result: string;
  readonly measured?: { readonly value: number; readonly unit: string };
  readonly speaksFor: readonly CauseId[];
  readonly speaksAgainst: readonly CauseId[];
  readonly strength: 'weak' | 'clear' | 'strong';
}

export interface HandOverRepair {
  readonly at: string;
  readonly by: string;
  readonly what: string;
  readonly parts: readonly { readonly name: string; readonly number?: string; readonly price?: number }[];
  readonly minutes?: number;
  readonly addresses: readonly CauseId[];
}

export interface HandOverProof {
  readonly verdict: 'held' | 'not-held' | 'not-proven';
  readonly words: string;
  readonly missing: string;
}

/** The proof in numbers, worked out from findings and checks when the document is made. */
export interface HandOverWorked {
  readonly proof: Proof;
  /** What it was judged against. */
  readonly limit: Pick<Limit, 'label' | 'diameterMm'>;
}

/** The car's own word and what follows from it for an inspection. */
export interface HandOverMonitor {
  /** Before the repair and after it, as far as it was read; at least one. */
  readonly readings: readonly (CarsWord & { readonly at: string; readonly fileName?: string })[];
  readonly rule: InspectionRule;
  /** Of the newest reading; null: the model year is not known. */
  readonly inspection: Inspection | null;
  /** null: no forecast, or the monitor has run. */
  readonly plan: (DrivePlan & { readonly zone: string }) | null;
}

/** A photo as it is printed: small, upright, without what the camera wrote beside it. */
export interface HandOverPicture {
  readonly mediaType: 'image/jpeg' | 'image/png';
  readonly bytes: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface HandOver {
  readonly language: HandOverLanguage;
  readonly units: HandOverUnits;
  readonly parts: readonly HandOverPart[];
  readonly program: string;
  /** Time of this document, ISO 8601 UTC. */
  readonly madeAt: string;
  readonly shop: {
    readonly name: string;
    readonly address: string;
    readonly telephone?: string;
    readonly email?: string;
  };
  readonly technician?: string;
  readonly job: { readonly number: number; readonly openedAt: string; readonly demo: boolean };
  readonly vehicle: {
    readonly name: string;
    readonly owner?: string;
    readonly registration?: string;
    readonly vin?: string;
    readonly modelYear?: number;
    readonly odometerKm?: number;
  };
  readonly car: Car | null;
  readonly complaint: { readonly words: string; readonly types: readonly HandOverComplaint[] };
  readonly codes: {
    readonly before: readonly HandOverCode[];
    /** null: not read again after the repair. */
    readonly after: readonly HandOverCode[] | null;
  };
  readonly limits: readonly Limit[];
  readonly recordings: readonly HandOverRecording[];
  /** Made from recordings before the repair, and from those after it. */
  readonly findings: { readonly before: HandOverFinding | null; readonly after: HandOverFinding | null };
  readonly checks: readonly HandOverCheck[];
  readonly repairs: readonly HandOverRepair[];
  /** As it stands in the job; null where nobody has taken one. */
  readonly proof: HandOverProof | null;
  /** null where nothing was repaired. */
  readonly worked: HandOverWorked | null;
  /** Absent: the car was never asked for its monitors. */
  readonly monitor?: HandOverMonitor | undefined;
  readonly notes: readonly { readonly at: string; readonly by: string; readonly text: string }[];
  readonly attachments: readonly {
    readonly fileName: string;
    readonly caption: string;
    readonly sha256: string;
    readonly at: string;
    /** Absent: no picture, or one too many for a document. */
    readonly picture?: HandOverPicture;
  }[];
}
