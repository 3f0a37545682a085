import { type Commands, readCommands } from './commands.ts';
import { withImplied } from './implied-commands.ts';
import { joinLabels } from './label-phases.ts';
import { labelRefuelling } from './phases-refuelling.ts';
import { labelVacuumDraw } from './phases-vacuum-draw.ts';
import { type FoundProcedure, findProcedure } from './procedure.ts';
import type { Phase, PhaseKind, ProcedureKind, Recording } from './recording.ts';

/** The phases that occur in each procedure. */
export const PHASES_OF: Readonly<Record<ProcedureKind, readonly PhaseKind[]>> = {
  'vacuum-draw': ['baseline', 'purge', 'sealed', 'draw', 'settle', 'hold', 'release', 'rest'],
  'engine-off': ['vented', 'sealed', 'idle', 'purge'],
  'purge-drive': ['purge', 'idle', 'rest'],
  refuelling: ['baseline', 'filling', 'filled', 'rest'],
  'pump-run': ['baseline', 'reference', 'tank-pump', 'release', 'rest'],
  'sealed-hold': ['hold', 'release'],
};

type Labeller = (recording: Recording, commands: Commands) => PhaseKind[];

const sample = (states: readonly boolean[] | undefined, i: number): boolean => states?.[i] === true;

const labelEngineOff: Labeller = ({ timeS }, commands) =>
  Array.from(timeS, (_, i) => {
    if (sample(commands.engineRuns, i)) return sample(commands.purging, i) ? 'purge' : 'idle';
    return sample(commands.ventClosed, i) ? 'sealed' : 'vented';
  });

const labelPurgeDrive: Labeller = ({ timeS }, commands) =>
  Array.from(timeS, (_, i) => {
    if (sample(commands.ventClosed, i)) return 'rest';
    return sample(commands.purging, i) ? 'purge' : 'idle';
  });

const labelPumpRun: Labeller = ({ timeS }, commands) => {
  const first = commands.pumpOn?.indexOf(true) ?? -1;
  return Array.from(timeS, (_, i) => {
    if (!sample(commands.pumpOn, i)) return i < first ? 'baseline' : 'rest';
    if (!sample(commands.toTank, i)) return 'reference';
    return sample(commands.purging, i) ? 'release' : 'tank-pump';
  });
};

const labelSealedHold: Labeller = ({ timeS }, commands) =>
  Array.from(timeS, (_, i) => (sample(commands.isolationOpen, i) ? 'release' : 'hold'));

const LABELLERS: Readonly<Record<ProcedureKind, Labeller>> = {
  'vacuum-draw': (recording, commands) => {
    const all = withImplied(recording, commands);
    return all.ventClosed ? labelVacuumDraw(recording, all) : Array.from(recording.timeS, () => 'rest');
  },
  'engine-off': labelEngineOff,
  'purge-drive': labelPurgeDrive,
  refuelling: labelRefuelling,
  'pump-run': labelPumpRun,
  'sealed-hold': labelSealedHold,
};

/**
 * The phases of a recording in order, from its first to its last sample without gap or overlap. Phases
 * that a person gives go before; where they leave time open the found ones stand.
 */
export function findPhases(
  recording: Recording,
  given: readonly Phase[] = [],
  procedure: FoundProcedure = findProcedure(recording),
): Phase[] {
  const { timeS } = recording;
  if (timeS.length === 0) return [];
  const labels: PhaseKind[] =
    procedure.kind === 'unknown'
      ? new Array<PhaseKind>(timeS.length).fill('rest')
      : LABELLERS[procedure.kind](recording, readCommands(recording));
  for (const phase of given)
    for (let i = 0; i < timeS.length; i++)
      if (timeS[i]! >= phase.fromS && (timeS[i]! < phase.toS || (i === timeS.length - 1 && timeS[i]! <= phase.toS)))
        labels[i] = phase.kind;
  return joinLabels(timeS, labels);
}
