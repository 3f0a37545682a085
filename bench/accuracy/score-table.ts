/** The scores as a table for the eye. */
import type { Scores } from './score.ts';
import type { FaultScores } from './score-faults.ts';
import type { SizeScores, ThresholdScores } from './score-sizes.ts';

const LABEL_WIDTH = 26;

type Cell = number | undefined;

const fixed = (digits: number) => (x: Cell) => (x === undefined ? '-' : x.toFixed(digits));
const whole = fixed(0);
const three = fixed(3);
const two = fixed(2);

const CAUSE_ROWS: readonly (readonly [string, (s: FaultScores) => string])[] = [
  ['cases', (s) => whole(s.n)],
  ['top-1', (s) => three(s.top1)],
  ['top-3', (s) => three(s.top3)],
  ['top-1 wide', (s) => three(s.top1_wide)],
  ['top-3 wide', (s) => three(s.top3_wide)],
  ['log score', (s) => three(s.log)],
  ['Brier', (s) => three(s.brier)],
];

const SIZE_ROWS: readonly (readonly [string, (s: SizeScores) => string])[] = [
  ['holes of 0.2 to 5 mm', (s) => whole(s.n_diameter)],
  ['given no diameter', (s) => whole(s.no_diameter)],
  ['median |ln d/d_true|', (s) => three(s.median_abs_ln)],
  ['90th percentile', (s) => three(s.p90_abs_ln)],
  ['bias of ln d', (s) => three(s.bias_ln)],
  ['RMSE of ln d', (s) => three(s.rmse_ln)],
  ['RMSE / bound', (s) => two(s.rmse_over_crb)],
  ['90 % interval covers', (s) => three(s.coverage90)],
  ['its median ln width', (s) => three(s.median_interval_ln_width)],
  ...(['mm0_5', 'mm1_0'] as const).flatMap((key) => {
    const at = key === 'mm0_5' ? '0.5' : '1.0';
    const of = (f: (x: ThresholdScores) => string) => (s: SizeScores) => f(s.thresholds[key]);
    return [
      [`false alarms at ${at} mm`, of((x) => counted(x.false_alarm_no_fault, x.n_no_fault))] as const,
      [`missed at ${at} mm`, of((x) => counted(x.missed, x.n_at_or_above))] as const,
      [`accuracy at ${at} mm`, of((x) => three(x.accuracy))] as const,
    ];
  }),
];

const counted = (part: Cell, n: number) => (part === undefined ? '-' : `${Math.round(part * n)} of ${n}`);

function block<T>(
  title: string,
  columns: Readonly<Record<string, T>>,
  rows: readonly (readonly [string, (column: T) => string])[],
): string[] {
  const names = Object.keys(columns);
  if (names.length === 0) return [];
  const line = (label: string, cells: readonly string[]) =>
    `${label.padEnd(LABEL_WIDTH)}${cells.map((cell, i) => cell.padStart(Math.max(12, names[i]!.length + 2))).join('')}`;
  return [
    '',
    line(title, names),
    ...rows.map(([label, show]) =>
      line(
        label,
        names.map((n) => show(columns[n]!)),
      ),
    ),
  ];
}

export function scoresTable(scores: Scores): string {
  const { n, accused } = scores.confounders;
  const which = scores.only === 'all' ? '' : `, ${scores.only} numbers only`;
  return [
    `${scores.set}${which}: ${scores.cases} cases, ${scores.answered} answered`,
    ...block('cause, by procedure', scores.causes, CAUSE_ROWS),
    ...block('size, by procedure', scores.sizes, SIZE_ROWS),
    '',
    `two faults, both in the first two places: ${three(scores.two_faults_both_in_top2)}`,
    `sound cars with hot fuel or slosh given a fault with more than 0.5: ${accused} of ${n}`,
  ].join('\n');
}
