/** Recorded before and after as one lane over one time axis. */
import type { StoredSheet } from '../../report/sheet.ts';
import { type PlacedTrace, type TracesTogether, tracesTogether, valueAt } from '../../report/traces-together.ts';
import type { Readout } from '../recording/chart/cursor-values.tsx';
import { airyRange, type Lane, type Shown } from '../recording/chart/lanes.ts';
import { column, type Source } from '../recording/chart/source.ts';

type Sheet = Pick<StoredSheet, 'recordings' | 'finding'>;

export interface ComparedTraces {
  readonly procedure: StoredSheet['recordings'][number]['procedure'];
  readonly together: TracesTogether;
}

const LEAST_PRESSURE_PA = 200;
/** So few that the chart draws lines, whose dashes tell the two apart without colour, and not the envelope of many samples. */
const POINTS = 400;

function traceOf({ recordings, finding }: Sheet, at: number): PlacedTrace | undefined {
  const overlay = finding.overlays.find(({ recording }) => recording === at);
  const facts = recordings[at];
  if (overlay === undefined || facts === undefined) return undefined;
  return {
    timeS: overlay.timeS,
    gaugePa: overlay.recordedGaugePa.map((pa) => pa ?? Number.NaN),
    phases: facts.phases,
  };
}

/** The first two recordings of the same procedure; null where no procedure was recorded on both sides. */
export function comparedTraces(before: Sheet, after: Sheet): ComparedTraces | null {
  for (const [i, { procedure }] of before.recordings.entries()) {
    const k = after.recordings.findIndex((recording) => recording.procedure === procedure);
    const [one, other] = [traceOf(before, i), k < 0 ? undefined : traceOf(after, k)];
    if (one !== undefined && other !== undefined) return { procedure, together: tracesTogether(one, other) };
  }
  return null;
}

export interface BeforeAfterChart {
  readonly source: Source;
  readonly lanes: readonly Lane[];
  readonly readouts: readonly Readout[];
}

export function beforeAfterChart(
  { before, after }: TracesTogether,
  words: { readonly pressure: string; readonly before: string; readonly after: string },
  shown: Shown,
): BeforeAfterChart {
  const times = [before, after].flatMap(({ timeS: own }) => [own[0] ?? 0, own.at(-1) ?? 0]);
  const [from, to] = [Math.min(...times), Math.max(...times)];
  const timeS = Float64Array.from({ length: POINTS }, (_, i) => from + ((to - from) * i) / (POINTS - 1));
  const columns = [before, after].map((trace) => Float32Array.from(timeS, (t) => valueAt(trace, t)));
  const all = columns.flatMap((values) => [...values].filter(Number.isFinite));
  const range = airyRange(Math.min(0, ...all), Math.max(0, ...all), LEAST_PRESSURE_PA);
  return {
    source: { timeS, columns: columns.map(column), pauses: [] },
    lanes: [
      {
        id: 'before-after',
        title: words.pressure,
        shown,
        range,
        layers: [
          { kind: 'line', column: 0, pen: 'rival' },
          { kind: 'line', column: 1, pen: 'model' },
        ],
        size: 'tall',
      },
    ],
    readouts: [
      { id: 'before', title: words.before, column: 0, shown },
      { id: 'after', title: words.after, column: 1, shown },
    ],
  };
}
