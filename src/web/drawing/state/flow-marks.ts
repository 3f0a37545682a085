/** Flow as marks, each of which stands for a mass of gas; where they are follows from the mass that has gone through. */

/** What a mark can stand for. The smallest that keeps the marks apart is used; each has its own shape. */
export const MARK_KG = [2e-6, 2e-5, 2e-4, 2e-3, 2e-2] as const;
/** Marks a second of the person's time above which the next larger mark is used. */
const MOST_PER_S = 9;
/** Speed of marks that pass once a second, px/s; speed and density both grow with the root of the flow. */
const SPEED_PX = 30;
/** Below, marks would stand about and say that something flows. */
const LEAST_PER_S = 0.1;
const LEAST_SPACING_PX = 9;
const MOST_SPACING_PX = 90;

export interface MarkPlan {
  /** Index into MARK_KG. */
  readonly mark: number;
  readonly spacingPx: number;
  /** Distance of the first mark from the beginning of the way. */
  readonly firstPx: number;
}

/**
 * Marks on a way at a moment. Without memory: going to a time shows what playing to it shows.
 * @param flowKgPerS flow in the way's direction
 * @param passedKg what has gone through since the start
 * @param tempo how much faster than real time it plays
 * @returns marks, or none where the flow is too small to show
 */
export function planMarks(flowKgPerS: number, passedKg: number, tempo: number): MarkPlan | undefined {
  const wall = Math.abs(flowKgPerS) * tempo;
  let mark = MARK_KG.findIndex((kg) => wall / kg <= MOST_PER_S);
  if (mark < 0) mark = MARK_KG.length - 1;
  const perS = wall / MARK_KG[mark]!;
  if (perS < LEAST_PER_S) return undefined;
  const spacingPx = Math.min(MOST_SPACING_PX, Math.max(LEAST_SPACING_PX, SPEED_PX / Math.sqrt(perS)));
  const count = passedKg / MARK_KG[mark]!;
  return { mark, spacingPx, firstPx: (count - Math.floor(count)) * spacingPx };
}
