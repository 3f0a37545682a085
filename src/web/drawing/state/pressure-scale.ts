/** The pressure scale around ambient: the same for every space and for both systems. */

const NICE_PA = [250, 500, 1_000, 2_000, 3_000, 5_000, 10_000, 20_000, 40_000] as const;

/** Half the width of the scale: the least round number that holds all spaces of all runs. */
export function scaleLimitPa(largestPa: number): number {
  return NICE_PA.find((limit) => largestPa <= limit * 1.02) ?? NICE_PA.at(-1)!;
}

const LOW = ['--pressure-0', '--pressure-low-1', '--pressure-low-2', '--pressure-low-3'] as const;
const HIGH = ['--pressure-0', '--pressure-high-1', '--pressure-high-2', '--pressure-high-3'] as const;

/** The colour of a gauge pressure, mixed in OKLab from the look's own steps, so that each theme and print has its own. */
export function pressureColour(gaugePa: number, limitPa: number): string {
  const share = Math.min(1, Math.abs(gaugePa) / limitPa);
  const steps = gaugePa < 0 ? LOW : HIGH;
  const at = share * (steps.length - 1);
  const k = Math.min(steps.length - 2, Math.floor(at));
  const percent = Math.round((at - k) * 100);
  return `color-mix(in oklab, var(${steps[k + 1]}) ${percent}%, var(${steps[k]}))`;
}
