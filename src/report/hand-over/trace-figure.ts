/** A recording's pressure with the modelled one over it where there is one, on axes that before and after share. */
import { max, min } from 'd3-array';
import type { Drawing, Mark, Point } from '../drawing.ts';
import type { FigureWords } from '../figure-words.ts';
import { wholePercent } from '../numbers.ts';
import { overlayBand, overlayLine, UNITS_PER_DOT } from '../overlay-shapes.ts';
import { plotFrame } from '../plot-frame.ts';
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

export const figureWords = ({ words, q }: Desk): FigureWords => ({
  phase: (kind) => words.phases[kind],
  purge: words.figure.purge,
  vent: words.figure.vent,
  purgeUpTo: (duty) => words.figure.purgeUpTo(wholePercent(duty)),
  pressureUnit: q.pressureUnit,
  pascalPerUnit: q.pascalPerUnit,
  number: q.number,
});

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
      { kind: 'area', pen: 'rival-band', points: overlayBand(rival, frame) },
      { kind: 'line', pen: 'rival', points: overlayLine(rival, frame) },
    );
  }
  if (model !== null) {
    marks.push(
      { kind: 'area', pen: 'band', points: overlayBand(model, frame) },
      { kind: 'line', pen: 'model', points: overlayLine(model, frame) },
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
