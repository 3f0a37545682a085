/** What a scenario would show on the tank pressure sensor, as one figure. */
import { max, min } from 'd3-array';
import type { Phase } from '../recording/recording.ts';
import type { Commands } from './command-lanes.ts';
import type { Drawing, Point } from './drawing.ts';
import { fixed } from './numbers.ts';
import { plotFrame } from './plot-frame.ts';
import { PHASE_WORDS } from './words.ts';

export interface SimulatedFigure {
  readonly label: string;
  readonly timeS: Float64Array;
  readonly gaugePa: Float64Array;
  readonly phases: readonly Phase[];
  readonly commands: Commands;
  readonly width: number;
}

export function simulatedFigure(input: SimulatedFigure): Drawing {
  const { label, timeS, gaugePa, phases, commands, width } = input;
  const durationS = timeS.at(-1) ?? 0;
  // One point for each half figure unit is as fine as a line gets.
  const every = Math.max(1, Math.floor(timeS.length / (2 * width)));
  const frame = plotFrame({ width, durationS, phases, commands, pressuresPa: Array.from(gaugePa) });
  const points = Array.from(timeS, (t, i): Point => [frame.xAt(t), frame.yAt(gaugePa[i] ?? Number.NaN)]);
  const spoken = phases.map(
    (phase) => `${PHASE_WORDS[phase.kind]} ${Math.round(phase.fromS)} to ${Math.round(phase.toS)} s`,
  );
  return {
    width,
    height: frame.height,
    title: `Simulated tank pressure: ${label}`,
    description: `Tank pressure (gauge) over ${Math.round(durationS)} s, from ${fixed((min(gaugePa) ?? 0) / 1000, 2)} to ${fixed((max(gaugePa) ?? 0) / 1000, 2)} kPa. Phases: ${spoken.join(', ')}.`,
    marks: [
      ...frame.under,
      { kind: 'line', pen: 'model', points: points.filter((_, i) => i % every === 0 || i === points.length - 1) },
      ...frame.over,
    ],
  };
}
