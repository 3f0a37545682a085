/** Two recordings of the same test over one time axis: the later one is moved so that what is compared begins together. */
import type { Phase, PhaseKind } from '../recording/recording.ts';

export interface PlacedTrace {
  readonly timeS: readonly number[];
  readonly gaugePa: readonly number[];
  readonly phases: readonly Phase[];
}

export interface TracesTogether {
  readonly before: PlacedTrace;
  /** Moved along by `movedS`. */
  readonly after: PlacedTrace;
  readonly movedS: number;
  /** The phase that begins together; null where the two have none in common and neither was moved. */
  readonly at: PhaseKind | null;
}

/** What a test is judged by, in the order in which it is looked for. */
const COMPARED: readonly PhaseKind[] = ['hold', 'sealed', 'tank-pump', 'filling', 'purge', 'draw'];

const startOf = ({ phases }: PlacedTrace, kind: PhaseKind): number | undefined =>
  phases.find((phase) => phase.kind === kind)?.fromS;

export function tracesTogether(before: PlacedTrace, after: PlacedTrace): TracesTogether {
  const at = COMPARED.find((kind) => startOf(before, kind) !== undefined && startOf(after, kind) !== undefined) ?? null;
  const movedS = at === null ? 0 : (startOf(before, at) ?? 0) - (startOf(after, at) ?? 0);
  return {
    before,
    after: {
      timeS: after.timeS.map((t) => t + movedS),
      gaugePa: after.gaugePa,
      phases: after.phases.map(({ kind, fromS, toS }) => ({ kind, fromS: fromS + movedS, toS: toS + movedS })),
    },
    movedS,
    at,
  };
}

/** The value of a trace between its samples; not a number outside it and beside a missing sample. */
export function valueAt({ timeS, gaugePa }: PlacedTrace, t: number): number {
  const last = timeS.length - 1;
  if (last < 0 || t < timeS[0]! || t > timeS[last]!) return Number.NaN;
  let low = 0;
  let high = last;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (timeS[middle]! <= t) low = middle;
    else high = middle;
  }
  if (timeS[high]! === timeS[low]! || t === timeS[low]!) return gaugePa[low]!;
  if (t === timeS[high]!) return gaugePa[high]!;
  const share = (t - timeS[low]!) / (timeS[high]! - timeS[low]!);
  return gaugePa[low]! * (1 - share) + gaugePa[high]! * share;
}
