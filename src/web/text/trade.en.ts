/** Words of the trade that several pages use: causes, places, layouts, complaints, states. */
import type { CauseId, Place } from '../../diagnosis/finding.ts';
import type { Job, JobSummary } from '../../jobs/record/job.ts';
import type { PhaseKind, ProcedureKind } from '../../recording/recording.ts';
import { GENERAL_CAUTION, SEALED_TANK_CAUTION, STANDING_CAUTIONS } from '../../report/cautions.ts';
import {
  CAUSE_WORDS,
  COMPLAINT_WORDS,
  certaintyInWords,
  LAYOUT_NAMES,
  PHASE_WORDS,
  PROCEDURE_WORDS,
} from '../../report/words.ts';
import type { LayoutId } from '../../system/car.ts';

const causes = Object.fromEntries(Object.entries(CAUSE_WORDS).map(([id, { name }]) => [id, name])) as Record<
  CauseId,
  string
>;

const places: Record<Place, string> = {
  'cap and neck': 'cap and neck',
  'tank top': 'tank top',
  'vapour line': 'vapour line',
  canister: 'canister',
  'vent side': 'vent side',
  'purge line': 'purge line',
  'purge valve': 'purge valve',
  'vent valve': 'vent valve',
  'tank to canister': 'tank to canister',
  'fill-limit valve': 'fill-limit valve',
  'pressure sensor': 'pressure sensor',
  'pump module': 'pump module',
  'isolation valve': 'isolation valve',
};

const layouts: Record<LayoutId, { name: string; words: string }> = {
  'engine-vacuum': {
    name: LAYOUT_NAMES['engine-vacuum'],
    words:
      'The running engine draws the system down through the purge valve with the vent valve shut, then watches it hold. The common one.',
  },
  'engine-off': {
    name: LAYOUT_NAMES['engine-off'],
    words:
      'After the drive the vent valve shuts and the cooling tank makes its own small vacuum; no vacuum means a leak. Tests with the key out.',
  },
  'pump-reference': {
    name: LAYOUT_NAMES['pump-reference'],
    words:
      'A small electric pump at the canister vent first draws through a measuring orifice, then on the tank, and compares the two. Hours after the drive.',
  },
  'sealed-tank': {
    name: LAYOUT_NAMES['sealed-tank'],
    words:
      'An isolation valve keeps the tank shut, and it may stand under pressure; it opens for refuelling on request. Usual on plug-in hybrids.',
  },
  'saddle-tank': {
    name: LAYOUT_NAMES['saddle-tank'],
    words:
      'Two lobes over the drive shaft, joined low by a transfer pump and high by a vent. Otherwise an engine-vacuum draw.',
  },
  'two-path-purge': {
    name: LAYOUT_NAMES['two-path-purge'],
    words:
      'A boosted engine: at idle the intake pulls, under boost an ejector pulls, with check valves between. Otherwise an engine-vacuum draw.',
  },
};

const complaints: Record<Job['complaint']['types'][number], string> = COMPLAINT_WORDS;

const waitsFor: Record<JobSummary['waitsFor'], string> = {
  complaint: 'complaint',
  car: 'car',
  recording: 'recording',
  finding: 'finding',
  check: 'next check',
  repair: 'repair',
  proof: 'proof',
  'hand-over': 'hand-over',
  nothing: 'nothing more',
};

const phases: Record<PhaseKind, string> = PHASE_WORDS;
const procedures: Record<ProcedureKind | 'unknown', string> = PROCEDURE_WORDS;

export const TRADE_EN = {
  causes,
  places,
  layouts,
  complaints,
  waitsFor,
  phases,
  procedures,
  verdicts: {
    fault: 'fault found',
    'no-fault-seen': 'no fault seen',
    'cannot-tell': 'cannot tell yet',
  },
  codeStatus: { stored: 'stored', pending: 'pending', permanent: 'permanent' },
  strengths: {
    weak: 'weak hint',
    clear: 'speaks clearly',
    strong: 'as good as proof',
  },
  cautions: { general: GENERAL_CAUTION, sealedTank: SEALED_TANK_CAUTION, standing: [...STANDING_CAUTIONS] },
  cautionsShow: 'All cautions before hands-on work',
  certainty: certaintyInWords,
};
