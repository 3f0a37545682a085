/** Round numbers for axes. */
const STEPS = [1, 2, 5, 10];

/** Round values within [low, high], at most `most` of them (at least one when there is a round one). */
export function roundTicks(low: number, high: number, most: number): readonly number[] {
  if (!(high > low)) return [low];
  const rough = (high - low) / Math.max(1, most);
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = power * (STEPS.find((each) => each * power >= rough * 0.999999) ?? 10);
  const ticks: number[] = [];
  for (let k = Math.ceil(low / step - 1e-9); k * step <= high + 1e-9 * step; k++) ticks.push(k * step + 0); // plus 0: never a minus zero
  return ticks;
}

/** Decimals that tell neighbouring ticks apart. */
export function decimalsOf(ticks: readonly number[]): number {
  if (ticks.length < 2) return 1;
  const step = Math.abs(ticks[1]! - ticks[0]!);
  return Math.max(0, Math.min(6, Math.ceil(-Math.log10(step) - 1e-9)));
}

/** Steps of a clock, s: an axis in minutes has ticks at whole ones. */
const CLOCK_STEPS_S = [60, 120, 300, 600, 900, 1800, 3600, 7200, 14_400, 21_600, 43_200, 86_400, 172_800, 604_800];

export function timeTicks(fromS: number, toS: number, most: number): readonly number[] {
  const rough = (toS - fromS) / Math.max(1, most);
  if (toS - fromS < 180 || rough < 30) return roundTicks(fromS, toS, most);
  const step = CLOCK_STEPS_S.find((each) => each >= rough) ?? CLOCK_STEPS_S.at(-1)! * Math.ceil(rough / 604_800);
  const ticks: number[] = [];
  for (let t = Math.ceil(fromS / step) * step; t <= toS; t += step) ticks.push(t);
  return ticks;
}

/** A time on the axis: seconds while the view is short, minutes and hours as on a clock beyond. */
export function timeText(timeS: number, wideS: number, decimals: number, mark = '.'): string {
  if (wideS < 180) return timeS.toFixed(decimals).replace('-', '\u2212').replace('.', mark);
  const whole = Math.round(Math.abs(timeS));
  const two = (value: number): string => String(value).padStart(2, '0');
  const minutes = Math.floor(whole / 60);
  const text =
    minutes < 60
      ? `${minutes}:${two(whole % 60)}`
      : `${Math.floor(minutes / 60)}:${two(minutes % 60)}:${two(whole % 60)}`;
  return timeS < 0 && whole > 0 ? `\u2212${text}` : text;
}
