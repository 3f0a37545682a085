import { anyTrue, type Commands, readCommands, shareTrue } from './commands.ts';
import { withImplied } from './implied-commands.ts';
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

/** A push ends above ambient; a vacuum that is let go rises as fast and does not. Share of the rise. */
const ABOVE_SHARE = 0.5;

/** Largest rise of the tank pressure within the window to a level above ambient, Pa. */
function fastestPush(recording: Recording): number {
  const { timeS, channels } = recording;
  const pressure = channels.tankPressureGaugePa;
  let largest = 0;
  for (let i = 0; pressure && i < timeS.length; i++)
    for (let j = i + 1; j < timeS.length && timeS[j]! - timeS[i]! <= PUSH_WINDOW_S; j++)
      if (pressure[j]! > ABOVE_SHARE * (pressure[j]! - pressure[i]!))
        largest = Math.max(largest, pressure[j]! - pressure[i]!);
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
  if (commands.ventClosed === undefined) return withoutVent(recording, commands, engineOff);
  if (anyTrue(commands.ventClosed)) {
    if (engineOff) return { kind: 'engine-off', reasons: ['the vent is shut', 'the engine is off'] };
    if (commands.purging === undefined) return withoutPurge(recording, commands);
    if (commands.engineRuns)
      return { kind: 'vacuum-draw', reasons: ['the vent is shut', 'the engine runs', 'no purge command is seen'] };
    return {
      kind: 'engine-off',
      reasons: ['the vent is shut and nothing is purged', 'no engine speed is recorded'],
    };
  }
  if (commands.purging && shareTrue(commands.purging) > LEAST_PURGE_SHARE && !engineOff)
    return { kind: 'purge-drive', reasons: ['purge is at work', 'the vent is never shut'] };
  return { kind: 'unknown', reasons: ['the vent is never shut, nothing is purged and no fuel goes in'] };
}

/** The vent is shut and no purge command is recorded: a draw shows itself in the pressure. */
function withoutPurge(recording: Recording, commands: Commands): FoundProcedure {
  const reasons = ['the vent is shut, but no purge command is recorded'];
  return anyTrue(withImplied(recording, commands).purging)
    ? { kind: 'vacuum-draw', reasons: [...reasons, 'the pressure falls fast and stays, as in a vacuum draw'] }
    : { kind: 'unknown', reasons: [...reasons, 'the pressure shows no draw'] };
}

/** A purge that goes on for so long is a drive, s: no self-test pulls that long. */
const LONG_PURGE_S = 120;
/** Share of the time in which a car moves that drives. */
const LEAST_MOVING_SHARE = 0.2;
const MOVING_M_PER_S = 1;

function drives({ timeS, channels }: Recording, purging: readonly boolean[]): boolean {
  const speed = channels.vehicleSpeedMPerS;
  if (speed && shareTrue(Array.from(speed, (value) => value > MOVING_M_PER_S)) > LEAST_MOVING_SHARE) return true;
  let sinceS: number | undefined;
  return purging.some((on, i) => {
    sinceS = on ? (sinceS ?? timeS[i]!) : undefined;
    return sinceS !== undefined && timeS[i]! - sinceS > LONG_PURGE_S;
  });
}

/** No vent command, as in all data read by the open standard: purge, pressure and speed have to tell. */
function withoutVent(recording: Recording, commands: Commands, engineOff: boolean): FoundProcedure {
  const reasons = ['no vent command is recorded'];
  if (engineOff) return { kind: 'unknown', reasons: [...reasons, 'the engine is off and no fuel goes in'] };
  if (withImplied(recording, commands).ventClosed)
    return {
      kind: 'vacuum-draw',
      reasons: [...reasons, 'the pressure falls fast, stays and comes back, as in a vacuum draw'],
    };
  if (commands.purging === undefined) return { kind: 'unknown', reasons: [...reasons, 'the pressure shows no draw'] };
  if (shareTrue(commands.purging) <= LEAST_PURGE_SHARE)
    return { kind: 'unknown', reasons: [...reasons, 'hardly anything is purged'] };
  return drives(recording, commands.purging)
    ? { kind: 'purge-drive', reasons: [...reasons, 'purge is at work', 'the car moves or is purged for minutes'] }
    : { kind: 'unknown', reasons: [...reasons, 'a purge with the vent open and a failed draw look alike'] };
}
