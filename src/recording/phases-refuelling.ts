import type { PhaseKind, Recording } from './recording.ts';

/** Rise of the level that counts as fuel going in, fraction of the tank; over the window. */
const LEAST_RISE = 0.012;
/** Window over which the level's rise is measured, s. */
const WINDOW_S = 8;
/** Slowest filling that is told from slosh: 3 L/min into 60 L (judgement). */
const LEAST_RATE_PER_S = 0.0008;
/** The pressure step at start and stop is looked for this far from where the level tells it, s. */
const STEP_SEARCH_S = 10;
/** A step of the pressure at nozzle start or stop is at least this large, Pa (judgement). */
const LEAST_STEP_PA = 60;
/** Share of the rise below which the pressure counts as not yet pushed. */
const NEAR_LOWEST = 0.2;

/** A try that ends in a shut-off rises and falls by this much at least, Pa and share of the whole range (judgement). */
const LEAST_TRY_PA = 200;
const LEAST_TRY_SHARE = 0.2;
/** Fuel that is stopped by a shut-off pushes the pressure up within so long, s (judgement). */
const LONGEST_RISE_S = 15;

/**
 * Nozzle shut-offs that nobody noted, told from the pressure: each try pushes it up, each shut-off lets it fall again. Times of
 * the tops; one alone is the end of a filling and tells nothing new.
 */
function shutOffsByPressure(timeS: Float64Array, pressure: Float64Array | undefined): number[] {
  if (!pressure) return [];
  const there = Array.from(pressure.keys()).filter((i) => !Number.isNaN(pressure[i]!));
  const values = there.map((i) => pressure[i]!);
  const least = Math.max(LEAST_TRY_PA, LEAST_TRY_SHARE * (Math.max(...values) - Math.min(...values)));
  const tops: number[] = [];
  let low = 0;
  let lowest = values[0] ?? Number.NaN;
  let top = 0;
  let isRising = false;
  values.forEach((value, k) => {
    if (isRising) {
      if (value > values[top]!) top = k;
      if (values[top]! - value < least) return;
      if (values[top]! > 0 && timeS[there[top]!]! - timeS[there[low]!]! <= LONGEST_RISE_S)
        tops.push(timeS[there[top]!]!);
      isRising = false;
      low = k;
      lowest = value;
    } else {
      lowest = Math.min(lowest, value);
      // Where the pressure lies flat before the push, its last low counts.
      if (value <= lowest + LEAST_STEP_PA) low = k;
      if (value - lowest < least) return;
      isRising = true;
      top = k;
    }
  });
  return tops.length > 1 ? tops : [];
}

/** Level that does not flicker: the median of neighbours. */
function smoothLevel(level: Float64Array): Float64Array {
  return level.map((value, i) => {
    const near = [...level.subarray(Math.max(0, i - 2), i + 3)]
      .filter((each) => !Number.isNaN(each))
      .sort((a, b) => a - b);
    return near.length === 0 ? value : near[Math.floor(near.length / 2)]!;
  });
}

/** True where the level rises over a window around the sample. */
export function levelRises(timeS: Float64Array, level: Float64Array): boolean[] {
  const smooth = smoothLevel(level);
  const n = timeS.length;
  let from = 0;
  let to = 0;
  return Array.from(timeS, (t) => {
    while (timeS[from]! < t - WINDOW_S / 2) from++;
    while (to + 1 < n && timeS[to + 1]! <= t + WINDOW_S / 2) to++;
    const rise = smooth[to]! - smooth[from]!;
    const spanS = timeS[to]! - timeS[from]!;
    return rise >= LEAST_RISE && rise / Math.max(spanS, 1) >= LEAST_RATE_PER_S;
  });
}

/** Moves an edge to the largest pressure step near it: the gas answers at once, the float late. */
function refine(timeS: Float64Array, pressure: Float64Array | undefined, at: number, sign: 1 | -1): number {
  if (!pressure) return at;
  let best = at;
  let largest = LEAST_STEP_PA;
  for (let i = 2; i < timeS.length; i++) {
    if (Math.abs(timeS[i]! - timeS[at]!) > STEP_SEARCH_S) continue;
    // Over two intervals, as a step may take more than one sample.
    const step = sign * (pressure[i]! - pressure[i - 2]!);
    if (step > largest) {
      largest = step;
      best = sign * (pressure[i - 1]! - pressure[i - 2]!) > step / 2 ? i - 1 : i;
    }
  }
  return best;
}

/** Where neither level nor notes tell: from the start of the strongest push to its top. */
function pushOnly(pressure: Float64Array | undefined): [number, number][] {
  if (!pressure) return [];
  let top = 0;
  pressure.forEach((value, i) => {
    if (value > pressure[top]! || Number.isNaN(pressure[top]!)) top = i;
  });
  const start = startByPressure(pressure, 0, top + 1);
  return start === undefined ? [] : [[start, top + 1]];
}

/** Stretches of filling, as first and one past the last sample. */
function fillingSpans(recording: Recording): [number, number][] {
  const { timeS, channels, notes } = recording;
  const n = timeS.length;
  const flow = channels.fillFlowM3PerS;
  const rises = flow
    ? Array.from(flow, (value) => value > 0)
    : channels.fuelLevel
      ? levelRises(timeS, channels.fuelLevel)
      : new Array<boolean>(n).fill(false);
  let spans: [number, number][] = [];
  for (let i = 0; i < n; i++) {
    if (!rises[i]) continue;
    const last = spans.at(-1);
    if (last && i === last[1]) last[1] = i + 1;
    else spans.push([i, i + 1]);
  }
  if (flow) return spans;
  const pressure = channels.tankPressureGaugePa;
  spans = spans.map(([from, to]) => [
    refine(timeS, pressure, from, 1),
    Math.min(n, refine(timeS, pressure, Math.min(n - 1, to), -1)),
  ]);
  const noted = (notes?.shutOffTimesS ?? []).filter((t) => t > timeS[0]! && t < timeS[n - 1]!);
  const stops = noted.length > 0 ? noted : shutOffsByPressure(timeS, pressure);
  if (stops.length === 0) {
    spans = spans.filter(([from, to]) => to > from);
    return spans.length > 0 ? spans : pushOnly(pressure);
  }
  return cutAtShutOffs(timeS, spans, stops, pressure);
}

/**
 * Start of the filling that a shut-off ended: going back from it, where the pressure last stood near its
 * lowest since the shut-off before. Undefined when the pressure does not tell.
 */
function startByPressure(pressure: Float64Array | undefined, earliest: number, stop: number): number | undefined {
  if (!pressure) return undefined;
  const part = pressure.subarray(earliest, stop);
  // Missing samples are NaN and take no part.
  const lowest = Math.min(...part.filter((value) => !Number.isNaN(value)));
  const atStop = Math.max(...Array.from(part.slice(-2), (value) => (Number.isNaN(value) ? lowest : value)));
  if (!(atStop - lowest > LEAST_STEP_PA)) return undefined;
  const threshold = lowest + NEAR_LOWEST * (atStop - lowest);
  let at = stop - 1;
  while (at > earliest && !(pressure[at - 1]! < threshold)) at--;
  return at;
}

/** The noted shut-off times end the fillings exactly; pressure, else level, tells the starts. */
function cutAtShutOffs(
  timeS: Float64Array,
  spans: readonly [number, number][],
  stops: readonly number[],
  pressure: Float64Array | undefined,
): [number, number][] {
  const cut: [number, number][] = [];
  let earliest = 0;
  for (const stop of [...stops].sort((a, b) => a - b)) {
    const to = timeS.findIndex((t) => t > stop);
    if (to <= earliest) continue;
    const byLevel = spans.find(([from]) => from >= earliest && from < to)?.[0];
    const from = startByPressure(pressure, earliest, to) ?? byLevel ?? to - 1;
    cut.push([Math.max(earliest, from), to]);
    earliest = to;
  }
  return cut;
}

/** Phases of a refuelling from the fill flow, or from level, pressure and the noted shut-off times. */
export function labelRefuelling(recording: Recording): PhaseKind[] {
  const n = recording.timeS.length;
  const labels = new Array<PhaseKind>(n).fill('baseline');
  const spans = fillingSpans(recording);
  const first = spans[0]?.[0];
  if (first === undefined) return labels.fill('rest');
  labels.fill('filled', first);
  for (const [from, to] of spans) labels.fill('filling', from, to);
  return labels;
}
