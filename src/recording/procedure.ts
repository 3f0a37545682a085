import { anyTrue, type Commands, readCommands, shareTrue } from './commands.ts';
import { labelPressureOnly } from './phases-pressure-only.ts';
import { levelRises } from './phases-refuelling.ts';
import type { ProcedureKind, Recording } from './recording.ts';
import { rangeOf } from './value-range.ts';

export interface FoundProcedure {
  readonly kind: ProcedureKind | 'unknown';
  /** What spoke for it, in sentences for a reader. */
  readonly reasons: readonly string[];
}

/** A level rise that is fuel going in and not slosh, fraction of the tank. */
const LEAST_FILL = 0.05;
/** Of the time purging without engine data, from which on it is a drive. */
const LEAST_PURGE_SHARE = 0.02;

/** Fuel going in against a blocked vent pushes the gas faster than heat can (judgement: 2 inH2O within 5 s). */
const LEAST_PUSH_PA = 500;
const PUSH_WINDOW_S = 5;

/** Largest rise of the tank pressure within the window, Pa. */
function fastestPush(recording: Recording): number {
  const { timeS, channels } = recording;
  const pressure = channels.tankPressureGaugePa;
  let largest = 0;
  for (let i = 0; pressure && i < timeS.length; i++)
    for (let j = i + 1; j < timeS.length && timeS[j]! - timeS[i]! <= PUSH_WINDOW_S; j++)
      largest = Math.max(largest, pressure[j]! - pressure[i]! || 0);
  return largest;
}

function levelRise(recording: Recording): number {
  const level = recording.channels.fuelLevel;
  if (!level || level.length < 4) return 0;
  const quarter = Math.max(1, Math.floor(level.length / 10));
  const start = rangeOf(level.subarray(0, quarter))?.median;
  const end = rangeOf(level.subarray(level.length - quarter))?.median;
  if (start === undefined || end === undefined || end - start < LEAST_FILL) return 0;
  return levelRises(recording.timeS, level).includes(true) ? end - start : 0;
}

const drawn = (commands: Commands): boolean =>
  commands.ventClosed?.some((shut, i) => shut && commands.purging?.[i] === true) ?? false;

/** From this share on a draw is one of the canister side alone. */
const MOSTLY = 0.9;

/** Of the time that is drawn, the share with the tank shut off by its isolation valve. */
function shareDrawnSealed({ ventClosed, purging, isolationOpen }: Commands): number {
  const open = (isolationOpen ?? []).filter((_, i) => ventClosed?.[i] === true && purging?.[i] === true);
  return 1 - shareTrue(open);
}

/** Tells which procedure a recording shows, from its commands, its channels and the notes; says why. */
export function findProcedure(recording: Recording): FoundProcedure {
  const { channels, notes } = recording;
  if (notes?.procedure) return { kind: notes.procedure, reasons: ['the notes say so'] };
  if (recording.timeS.length < 2) return { kind: 'unknown', reasons: ['there are fewer than two samples'] };
  const commands = readCommands(recording);
  if (anyTrue(commands.pumpOn)) return { kind: 'pump-run', reasons: ['the leak pump runs'] };
  if (commands.isolationOpen && !anyTrue(commands.purging))
    return { kind: 'sealed-hold', reasons: ['the isolation valve is recorded, and nothing is purged'] };
  if (commands.isolationOpen && drawn(commands) && shareDrawnSealed(commands) > MOSTLY)
    return { kind: 'sealed-hold', reasons: ['the isolation valve stays shut while the canister side is drawn down'] };

  const engineOff = commands.engineRuns !== undefined && shareTrue(commands.engineRuns) < 0.5;
  const noted = (notes?.shutOffTimesS?.length ?? 0) > 0 || notes?.filledM3 !== undefined;
  if (noted) return { kind: 'refuelling', reasons: ['the notes give shut-off times or a volume delivered'] };
  if (channels.fillFlowM3PerS?.some((flow) => flow > 0)) return { kind: 'refuelling', reasons: ['fuel flows in'] };
  const rise = levelRise(recording);
  if (rise > LEAST_FILL && !anyTrue(commands.ventClosed) && (engineOff || commands.engineRuns === undefined))
    return {
      kind: 'refuelling',
      reasons: [
        `the level rises by ${Math.round(100 * rise)} %`,
        engineOff ? 'the engine is off' : 'no engine speed is recorded',
      ],
    };

  const push = engineOff && !anyTrue(commands.ventClosed) && !anyTrue(commands.purging) ? fastestPush(recording) : 0;
  if (push > LEAST_PUSH_PA)
    return {
      kind: 'refuelling',
      reasons: [
        `the pressure rises by ${Math.round(push)} Pa within ${PUSH_WINDOW_S} s`,
        'the engine is off and the vent open, so only fuel going in can do that',
      ],
    };

  if (drawn(commands)) return { kind: 'vacuum-draw', reasons: ['the purge valve works while the vent is shut'] };
  if (anyTrue(commands.ventClosed)) {
    if (engineOff) return { kind: 'engine-off', reasons: ['the vent is shut', 'the engine is off'] };
    if (commands.engineRuns)
      return { kind: 'vacuum-draw', reasons: ['the vent is shut', 'the engine runs', 'no purge command is seen'] };
    return commands.purging
      ? { kind: 'engine-off', reasons: ['the vent is shut and nothing is purged', 'no engine speed is recorded'] }
      : byPressure(recording, ['the vent is shut, but neither purge nor engine speed is recorded']);
  }
  if (commands.purging && shareTrue(commands.purging) > LEAST_PURGE_SHARE && !engineOff)
    return { kind: 'purge-drive', reasons: ['purge is at work', 'the vent is never shut'] };
  if (commands.ventClosed === undefined) return byPressure(recording, ['no vent command is recorded']);
  return { kind: 'unknown', reasons: ['the vent is never shut, nothing is purged and no fuel goes in'] };
}

function byPressure(recording: Recording, reasons: readonly string[]): FoundProcedure {
  const labels = labelPressureOnly(recording);
  if (labels.includes('draw'))
    return {
      kind: 'vacuum-draw',
      reasons: [...reasons, 'the pressure falls fast, stays and comes back, as in a vacuum draw'],
    };
  return { kind: 'unknown', reasons: [...reasons, 'the pressure shows no draw'] };
}
