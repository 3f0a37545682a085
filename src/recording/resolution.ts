const MOST_STEPS = 20_000;
/** Share of the steps that must be whole multiples before a channel counts as quantised. */
const NEEDED_SHARE = 0.9;
const FEWEST_STEPS = 8;

export interface Resolution {
  /** Quantisation step in the channel's SI unit. */
  readonly step: number;
  /** Share of the sample-to-sample changes that are whole multiples of it. */
  readonly multipleShare: number;
}

/** Non-zero changes between neighbouring samples, sorted; of a long channel an even selection. */
function changes(values: Float64Array): Float64Array {
  const stride = Math.max(1, Math.floor(values.length / MOST_STEPS));
  const found = new Float64Array(Math.ceil(values.length / stride));
  let n = 0;
  for (let i = 1; i < values.length; i += stride) {
    const change = Math.abs(values[i]! - values[i - 1]!);
    if (change > 0) found[n++] = change;
  }
  return found.subarray(0, n).sort();
}

function shareOfMultiples(steps: Float64Array, step: number, reach: number): number {
  let near = 0;
  let used = 0;
  for (const change of steps) {
    const multiple = change / step;
    if (multiple > reach) break;
    used++;
    if (Math.abs(multiple - Math.round(multiple)) < 0.15 && multiple > 0.5) near++;
  }
  return used === 0 ? 0 : near / used;
}

/**
 * The quantisation step of a channel: the spacing of which nearly all changes are whole multiples.
 * Absent when the channel moves too seldom or is finer than its noise. Rounded steps (9.03 written as
 * 9 or 9.25) are allowed for by refining the step on small multiples.
 */
export function findResolution(values: Float64Array): Resolution | undefined {
  const steps = changes(values);
  if (steps.length < FEWEST_STEPS) return undefined;
  const largest = steps[steps.length - 1]!;
  for (const q of [0.02, 0.1, 0]) {
    let step = steps[Math.floor(q * (steps.length - 1))]!;
    if (step < 1e-9 * largest) continue;
    for (let turn = 0; turn < 4; turn++) {
      let sum = 0;
      let multiples = 0;
      for (const change of steps) {
        const k = Math.round(change / step);
        if (k > 2 + 3 * turn) break;
        if (k < 1) continue;
        sum += change;
        multiples += k;
      }
      if (multiples > 0) step = sum / multiples;
    }
    // Random changes fall near a multiple 30 % of the time, so a high share within reach is telling.
    const share = shareOfMultiples(steps, step, 12);
    const within = shareOfMultiples(steps, step, 1.5);
    if (share >= NEEDED_SHARE && within > 0) return { step, multipleShare: share };
  }
  return undefined;
}
