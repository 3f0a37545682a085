/** The figures of a calibration run, as a table for people and one line for machines. */
import type { Judged } from './judge-case.ts';
import { type Coverage, chiSquare, chiSquareTail, coverage, histogram } from './statistics.ts';

const RANK_BINS = 20;
/** Bars: 1,000 recordings, central intervals. */
const BARS = { inside50: [0.47, 0.53], inside90: [0.88, 0.92] } as const;
/** True diameters [mm] between which the cases are told apart. */
const SIZE_EDGES_MM = [0, 0.35, 0.5, 0.7, 1, 1.4, 2, Number.POSITIVE_INFINITY] as const;

export interface Scores {
  readonly cases: number;
  readonly failed: number;
  readonly rank_histogram: readonly number[];
  readonly chi_square: number;
  readonly p_value: number;
  readonly coverage50: Coverage;
  readonly coverage90: Coverage;
  /** Median over the cases of ln(hi90 / lo90). */
  readonly median_width_ln: number;
  readonly median_error_ln: number;
  readonly target_reached: number;
  readonly bars_met: boolean;
  readonly groups: readonly Group[];
}

interface Group {
  readonly name: string;
  readonly cases: number;
  readonly coverage50: Coverage;
  readonly coverage90: Coverage;
  readonly median_width_ln: number;
  /** Mean of ln(median / true). */
  readonly bias_ln: number;
}

const middle = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

function group(name: string, list: readonly Judged[]): Group[] {
  if (list.length === 0) return [];
  const below = list.map((j) => j.below);
  return [
    {
      name,
      cases: list.length,
      coverage50: coverage(below, 0.5),
      coverage90: coverage(below, 0.9),
      median_width_ln: middle(list.map((j) => Math.log(j.hi90 / j.lo90))),
      bias_ln: list.reduce((s, j) => s + Math.log(j.median / j.trueDiameterMm), 0) / list.length,
    },
  ];
}

export function scoresOf(list: readonly Judged[], failed: number): Scores {
  const below = list.map((j) => j.below);
  const ranks = histogram(below, RANK_BINS);
  const statistic = chiSquare(ranks);
  const coverage50 = coverage(below, 0.5);
  const coverage90 = coverage(below, 0.9);
  const bySize = SIZE_EDGES_MM.slice(0, -1).flatMap((low, i) => {
    const high = SIZE_EDGES_MM[i + 1]!;
    const name = high === Number.POSITIVE_INFINITY ? `true ${low} mm and more` : `true ${low} to ${high} mm`;
    return group(
      name,
      list.filter((j) => j.trueDiameterMm >= low && j.trueDiameterMm < high),
    );
  });
  const reached = list.filter((j) => j.targetReached);
  return {
    cases: list.length,
    failed,
    rank_histogram: ranks,
    chi_square: statistic,
    p_value: chiSquareTail(statistic, RANK_BINS - 1),
    coverage50,
    coverage90,
    median_width_ln: middle(list.map((j) => Math.log(j.hi90 / j.lo90))),
    median_error_ln: middle(list.map((j) => Math.abs(Math.log(j.median / j.trueDiameterMm)))),
    target_reached: reached.length / list.length,
    bars_met:
      failed === 0 &&
      coverage50.share >= BARS.inside50[0] &&
      coverage50.share <= BARS.inside50[1] &&
      coverage90.share >= BARS.inside90[0] &&
      coverage90.share <= BARS.inside90[1],
    groups: [
      ...bySize,
      ...group('target vacuum reached', reached),
      ...group(
        'target vacuum not reached',
        list.filter((j) => !j.targetReached),
      ),
      ...[...new Set(list.map((j) => j.rateHz))]
        .sort((a, b) => a - b)
        .flatMap((rate) =>
          group(
            `${rate} Hz`,
            list.filter((j) => j.rateHz === rate),
          ),
        ),
      ...[...new Set(list.map((j) => j.stepPa))]
        .sort((a, b) => a - b)
        .flatMap((step) =>
          group(
            step === 0 ? 'no converter steps' : `steps of ${step} Pa`,
            list.filter((j) => j.stepPa === step),
          ),
        ),
    ],
  };
}

const percent = (c: Coverage) => `${c.share.toFixed(3)} +- ${c.error.toFixed(3)}`;

export function table(s: Scores): string {
  const most = Math.max(...s.rank_histogram);
  const lines = [
    `simulation-based calibration of the leak's diameter, ${s.cases} recordings drawn from the finding's own model`,
    '',
    `central 50 % interval covers   ${percent(s.coverage50)}   bar ${BARS.inside50.join(' to ')}`,
    `central 90 % interval covers   ${percent(s.coverage90)}   bar ${BARS.inside90.join(' to ')}`,
    `ranks uniform                  chi-square ${s.chi_square.toFixed(1)}, ${RANK_BINS - 1} degrees of freedom, p = ${s.p_value.toPrecision(3)}`,
    `width of the 90 % interval     median ${s.median_width_ln.toFixed(3)} in ln d; error of the median ${s.median_error_ln.toFixed(3)}`,
    `target vacuum reached          ${s.target_reached.toFixed(3)}`,
    ...(s.failed > 0 ? [`failed                         ${s.failed}`] : []),
    '',
    'posterior probability of a smaller hole than the true one',
    ...s.rank_histogram.map(
      (n, i) =>
        `${(i / RANK_BINS).toFixed(2)} ${String(n).padStart(4)} ${'#'.repeat(Math.round((40 * n) / Math.max(1, most)))}`,
    ),
    '',
    `${'group'.padEnd(28)}${'cases'.padStart(6)}${'50 %'.padStart(17)}${'90 %'.padStart(17)}${'width'.padStart(9)}${'bias ln'.padStart(9)}`,
    ...s.groups.map(
      (g) =>
        `${g.name.padEnd(28)}${String(g.cases).padStart(6)}${percent(g.coverage50).padStart(17)}${percent(g.coverage90).padStart(17)}${g.median_width_ln.toFixed(3).padStart(9)}${g.bias_ln.toFixed(3).padStart(9)}`,
    ),
    '(by true size a calibrated posterior need not cover evenly: the prior pulls both ends towards its middle)',
  ];
  return lines.join('\n');
}
