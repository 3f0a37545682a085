/** A recording's pressure with the modelled one over it where there is one, on axes that before and after share. */
import { max, min } from 'd3-array';
import type { Overlay } from '../../diagnosis/finding.ts';
import type { Drawing, Mark, Point } from '../drawing.ts';
import type { FigureWords } from '../figure-words.ts';
import { type PlotFrame, plotFrame } from '../plot-frame.ts';
import type { Desk } from './desk.ts';
import type { HandOverRecording } from './hand-over.ts';
import { upperFirst } from './outcome.ts';

/** Axes for several recordings at once. */
export interface SharedAxes {
  readonly durationS: number;
  readonly pressuresPa: readonly number[];
}

const finite = (values: readonly number[]): number[] => values.filter(Number.isFinite);

export function axesFor(recordings: readonly HandOverRecording[]): SharedAxes {
  const pressures = recordings.flatMap(({ trace, model, rival }) =>
    finite([...(trace?.gaugePa ?? []), ...(model?.modelledGaugePa ?? []), ...(rival?.modelledGaugePa ?? [])]),
  );
  return {
    durationS: Math.max(1, ...recordings.map(({ durationS }) => durationS)),
    pressuresPa: [min(pressures) ?? 0, max(pressures) ?? 0],
  };
}

export const pressureName = ({ words }: Desk, { procedure }: HandOverRecording): string =>
  procedure === 'pump-run' ? words.figure.pumpPressure : words.figure.tankPressure;

const figureWords = ({ words, q }: Desk): FigureWords => ({
  phase: (kind) => words.phases[kind],
  purge: words.figure.purge,
  vent: words.figure.vent,
  purgeUpTo: (duty) => words.figure.purgeUpTo(q.percent(duty)),
  pressureUnit: q.pressureUnit,
  pascalPerUnit: q.pascalPerUnit,
  number: q.number,
});

const line = (overlay: Overlay, { xAt, yAt }: PlotFrame): Point[] =>
  overlay.timeS.map((t, i): Point => [xAt(t), yAt(overlay.modelledGaugePa[i] ?? Number.NaN)]);

function band(overlay: Overlay, { xAt, yAt, top, bottom }: PlotFrame): Point[] {
  const clip = (value: number): number => Math.min(bottom, Math.max(top, value));
  const upper: Point[] = [];
  const lower: Point[] = [];
  overlay.timeS.forEach((t, i) => {
    const mid = overlay.modelledGaugePa[i] ?? Number.NaN;
    const half = overlay.bandPa[i] ?? Number.NaN;
    if (!Number.isFinite(mid + half)) return;
    upper.push([xAt(t), clip(yAt(mid + half))]);
    lower.push([xAt(t), clip(yAt(mid - half))]);
  });
  return [...upper, ...lower.reverse()];
}

/** One dot per so many figure units: dense enough to be the record, open enough to see the line through. */
const UNITS_PER_DOT = 3.5;

export function handOverTraceFigure(
  desk: Desk,
  recording: HandOverRecording,
  axes: SharedAxes,
  width: number,
): Drawing {
  const { words, q } = desk;
  const { trace, model, rival, phases, commands } = recording;
  const frame = plotFrame({
    width,
    durationS: axes.durationS,
    phases,
    commands,
    pressuresPa: axes.pressuresPa,
    words: figureWords(desk),
  });
  const all = (trace?.timeS ?? []).map((t, i): Point => [frame.xAt(t), frame.yAt(trace?.gaugePa[i] ?? Number.NaN)]);
  const span = frame.xAt(recording.durationS) - frame.left;
  const every = Math.max(1, Math.ceil(all.length / (span / UNITS_PER_DOT)));
  const dots = all.filter((point, i) => i % every === 0 && Number.isFinite(point[1]));
  const marks: Mark[] = [...frame.under];
  if (rival !== null) {
    marks.push(
      { kind: 'area', pen: 'rival-band', points: band(rival, frame) },
      { kind: 'line', pen: 'rival', points: line(rival, frame) },
    );
  }
  if (model !== null) {
    marks.push(
      { kind: 'area', pen: 'band', points: band(model, frame) },
      { kind: 'line', pen: 'model', points: line(model, frame) },
    );
  }
  marks.push({ kind: 'dots', pen: 'recorded', radius: 1.3, points: dots }, ...frame.over);
  const pressure = pressureName(desk, recording);
  const recorded = finite(trace?.gaugePa ?? []);
  return {
    width,
    height: frame.height,
    title: upperFirst(words.figure.traceTitle(pressure, recording.label)),
    description: words.figure.traceDescription({
      pressure,
      length: q.duration(recording.durationS),
      low: q.pressure(min(recorded) ?? 0),
      high: q.pressure(max(recorded) ?? 0),
      phases: phases
        .map(({ kind, fromS, toS }) => `${words.phases[kind]} ${q.number(fromS, 0)}–${q.number(toS, 0)} s`)
        .join(', '),
    }),
    marks,
  };
}
