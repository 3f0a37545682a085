import type { Commands } from './commands.ts';
import type { PhaseKind, Recording } from './recording.ts';

/** Time that the gas takes to come to rest after the purge valve shut (common practice, 1 to 3 s). */
const SETTLE_S = 2;
/** A reopened vent is watched at least this long (common practice: sound systems are back in 2 to 10 s). */
const LEAST_RELEASE_S = 15;
/** The release ends when this share of the pressure is gone, if it takes longer. */
const RELEASED_SHARE = 0.1;

/**
 * Phases of an engine-running vacuum draw from the vent and purge commands. Several attempts may follow
 * each other; a vent shut without a draw (the vapour check) is called sealed.
 */
export function labelVacuumDraw(recording: Recording, commands: Commands): PhaseKind[] {
  const { timeS } = recording;
  const pressure = recording.channels.tankPressureGaugePa;
  const n = timeS.length;
  const shut = commands.ventClosed ?? [];
  const purging = commands.purging ?? [];
  const labels: PhaseKind[] = [];
  let drawn = false;
  let drawEndS = 0;
  let openedS: number | undefined;
  let openedPa = Number.NaN;
  for (let i = 0; i < n; i++) {
    const t = timeS[i]!;
    if (shut[i]) {
      if (openedS !== undefined || i === 0 || !shut[i - 1]) drawn = false;
      openedS = undefined;
      if (purging[i]) {
        drawn = true;
        drawEndS = t;
        labels.push('draw');
      } else if (!drawn) labels.push('sealed');
      else {
        if (purging[i - 1]) drawEndS = t;
        labels.push(t - drawEndS < SETTLE_S ? 'settle' : 'hold');
      }
      continue;
    }
    if (i > 0 && shut[i - 1]) {
      openedS = t;
      openedPa = lastPressure(pressure, i - 1);
    }
    const value = pressure?.[i] ?? Number.NaN;
    if (
      openedS !== undefined &&
      t - openedS > LEAST_RELEASE_S &&
      !(Math.abs(value) > RELEASED_SHARE * Math.abs(openedPa))
    )
      openedS = undefined;
    labels.push(openedS !== undefined ? 'release' : purging[i] ? 'purge' : 'baseline');
  }
  return restAfterLast(labels);
}

function lastPressure(pressure: Float64Array | undefined, from: number): number {
  for (let i = from; pressure && i >= 0; i--) if (!Number.isNaN(pressure[i]!)) return pressure[i]!;
  return Number.NaN;
}

/** A baseline stands before something is sealed; after the last release it is rest. */
function restAfterLast(labels: PhaseKind[]): PhaseKind[] {
  const lastShut = Math.max(
    ...(['draw', 'settle', 'hold', 'sealed', 'release'] as const).map((kind) => labels.lastIndexOf(kind)),
  );
  return labels.map((label, i) => (label === 'baseline' && lastShut >= 0 && i > lastShut ? 'rest' : label));
}
