/** Recorded before and recorded after in one figure, told apart by dashes as well as by colour. */
import { max, min } from 'd3-array';
import type { Drawing, Mark, Point } from '../drawing.ts';
import { plotFrame } from '../plot-frame.ts';
import type { PlacedTrace, TracesTogether } from '../traces-together.ts';
import type { Desk } from './desk.ts';
import type { HandOverRecording } from './hand-over.ts';
import { upperFirst } from './outcome.ts';
import { figureWords, pressureName } from './trace-figure.ts';

/** Points of one line at most: more than one for a unit of the figure only thickens it. */
const MOST_POINTS = 350;

export function beforeAfterFigure(
  desk: Desk,
  recording: HandOverRecording,
  { before, after }: TracesTogether,
  width: number,
): Drawing {
  const { words } = desk;
  // What lies before the first sample of the earlier recording is left out: the axis begins where its time does.
  const durationS = Math.max(1, before.timeS.at(-1) ?? 0, after.timeS.at(-1) ?? 0);
  const pressures = [...before.gaugePa, ...after.gaugePa].filter(Number.isFinite);
  const frame = plotFrame({
    width,
    durationS,
    phases: before.phases,
    commands: { timeS: [] },
    pressuresPa: [min(pressures) ?? 0, max(pressures) ?? 0],
    words: figureWords(desk),
  });
  const lines = (trace: PlacedTrace, pen: 'rival' | 'model'): readonly Mark[] =>
    runsOf(trace).map((run) => ({ kind: 'line', pen, points: run.map(([t, pa]) => [frame.xAt(t), frame.yAt(pa)]) }));
  const pressure = pressureName(desk, recording);
  return {
    width,
    height: frame.height,
    title: upperFirst(words.figure.beforeAfterTitle(pressure)),
    description: words.figure.beforeAfterDescription(pressure, ends(desk, before), ends(desk, after)),
    marks: [...frame.under, ...lines(before, 'rival'), ...lines(after, 'model'), ...frame.over],
  };
}

/** Lowest and last pressure, for those who do not see the figure. */
function ends({ q }: Desk, { gaugePa }: PlacedTrace): { lowest: string; last: string } {
  const finite = gaugePa.filter(Number.isFinite);
  return { lowest: q.pressure(min(finite) ?? 0), last: q.pressure(finite.at(-1) ?? 0) };
}

/** Stretches without a missing sample, thinned. */
function runsOf({ timeS, gaugePa }: PlacedTrace): readonly (readonly Point[])[] {
  const every = Math.max(1, Math.ceil(timeS.length / MOST_POINTS));
  const runs: Point[][] = [[]];
  timeS.forEach((t, i) => {
    if (i % every !== 0 || t < 0) return;
    const pa = gaugePa[i]!;
    if (Number.isFinite(pa)) runs.at(-1)!.push([t, pa]);
    else if (runs.at(-1)!.length > 0) runs.push([]);
  });
  return runs.filter((run) => run.length > 1);
}
