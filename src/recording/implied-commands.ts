/**
 * The commands of a vacuum draw where no channel carries them. Data read by the open standard never hold the vent valve's
 * command, and many loggers leave the purge command out; purge and pressure, or the pressure alone, tell when they changed.
 */
import { shutTimes } from './bus/vent-from-draw.ts';
import type { Commands } from './commands.ts';
import { barePressure, type Draw, findDraw, findDraws } from './phases-pressure-only.ts';
import type { Recording, ShutTime } from './recording.ts';
import { selfTestDraws, shutForSelfTest } from './self-test-draws.ts';
import { ventAt } from './vent-by-hand.ts';

const states = (n: number, spans: readonly (readonly [number, number])[]): boolean[] => {
  const on = new Array<boolean>(n).fill(false);
  for (const [from, to] of spans) on.fill(true, from, to);
  return on;
};

/** Stretches in which a command is on, as first and one past the last sample. */
function stretches(on: readonly boolean[]): (readonly [number, number])[] {
  const found: [number, number][] = [];
  on.forEach((each, i) => {
    const last = found.at(-1);
    if (!each) return;
    if (last && last[1] === i) last[1] = i + 1;
    else found.push([i, i + 1]);
  });
  return found;
}

function purgingWhileShut(recording: Recording, ventClosed: readonly boolean[]): boolean[] | undefined {
  const bare = barePressure(recording);
  if (!bare) return undefined;
  const firstAt = (i: number): number => {
    const k = bare.at.findIndex((each) => each >= i);
    return k < 0 ? bare.at.length : k;
  };
  const spans = stretches(ventClosed).flatMap(([from, to]): [number, number][] => {
    const draw = findDraw(bare, firstAt(Math.max(0, from - 1)), firstAt(to));
    return draw ? [[Math.max(from, bare.at[draw.from]!), bare.at[draw.end]!]] : [];
  });
  return spans.length > 0 ? states(recording.timeS.length, spans) : undefined;
}

function shutByPurge(recording: Recording, isSaid: boolean): boolean[] | undefined {
  const { timeS, channels } = recording;
  const { tankPressureGaugePa, purgeDuty } = channels;
  if (!tankPressureGaugePa || !purgeDuty) return undefined;
  const bare = barePressure(recording)!;
  const pressure = { timeS: Float64Array.from(bare.t), values: Float64Array.from(bare.p) };
  const there = Array.from(timeS.keys()).filter((i) => !Number.isNaN(purgeDuty[i]!));
  const purge = {
    timeS: Float64Array.from(there, (i) => timeS[i]!),
    values: Float64Array.from(there, (i) => purgeDuty[i]!),
  };
  const shut: readonly ShutTime[] = isSaid ? shutTimes(pressure, purge) : shutForSelfTest(pressure, purge);
  return shut.length > 0 ? Array.from(ventAt(timeS, shut), (value) => value === 1) : undefined;
}

function byPressure(recording: Recording, isSaid: boolean): Pick<Commands, 'ventClosed' | 'purging'> {
  const bare = barePressure(recording);
  const draws: readonly Draw[] = isSaid && bare ? findDraws(bare) : selfTestDraws(recording);
  if (!bare || draws.length === 0) return {};
  const place = (k: number): number => bare.at[k] ?? recording.timeS.length;
  const n = recording.timeS.length;
  return {
    ventClosed: states(
      n,
      draws.map(({ from, release }) => [place(from), place(release)]),
    ),
    purging: states(
      n,
      draws.map(({ from, end }) => [place(from), place(end)]),
    ),
  };
}

/**
 * The recorded commands, and those that a vacuum draw implies in place of what is not recorded; unchanged where nothing shows
 * a draw. Who says in the notes that it is one is believed where the pressure alone would leave it open.
 */
export function withImplied(recording: Recording, commands: Commands): Commands {
  const isSaid = recording.notes?.procedure === 'vacuum-draw';
  const { ventClosed, purging } = commands;
  if (ventClosed && purging) return commands;
  if (ventClosed) {
    const implied = purgingWhileShut(recording, ventClosed);
    return implied ? { ...commands, purging: implied } : commands;
  }
  if (purging) {
    const implied = shutByPurge(recording, isSaid);
    return implied ? { ...commands, ventClosed: implied } : commands;
  }
  return { ...commands, ...byPressure(recording, isSaid) };
}
