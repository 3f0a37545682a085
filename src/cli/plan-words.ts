/** The next step and the plan behind it, in words for a terminal. */
import { checkById } from '../checks/catalogue/all.ts';
import type { Comparison, Plan, ProbableCause } from '../checks/plan.ts';
import type { PlanTree, TreeStep } from '../checks/plan-tree.ts';
import { cautionsOfRepair } from '../checks/repair-cautions.ts';
import type { RepairId } from '../checks/repairs.ts';
import { EN } from '../checks/text/en.ts';
import type { Meant } from '../checks/what-numbers-mean.ts';
import { GENERAL_CAUTION } from '../report/cautions.ts';
import { wrapped } from './finding-words.ts';

/** Depth and least chance of branches that are printed: the tree fits on a page. */
const DEPTH = 6;
const SHOWN = 0.03;

export function stepName(step: Pick<TreeStep, 'kind' | 'id'>): string {
  if (step.kind === 'check') return `${step.id} ${EN.checks[step.id]?.name ?? step.id}`;
  return step.kind === 'repair' ? EN.repairs[step.id as RepairId] : EN.sendAway;
}

/** Cautions of a step. */
export function cautionsOfStep(step: Pick<TreeStep, 'kind' | 'id'>): readonly string[] {
  if (step.kind === 'check') return checkById(step.id).cautions.map((id) => EN.cautions[id]);
  if (step.kind !== 'repair') return [];
  return cautionsOfRepair(step.id as RepairId).map((id) => EN.cautions[id]);
}

const percent = (p: number): string => (p > 0.995 ? 'over 99 %' : p < 0.005 ? 'under 1 %' : `${Math.round(100 * p)} %`);
const minutes = (value: number): string => `${Math.round(value)} min`;
const causeList = (causes: readonly ProbableCause[], most: number): string =>
  causes
    .slice(0, most)
    .map(({ id, probability }) => `${EN.causes[id]} ${percent(probability)}`)
    .join(', ');
const withSetups = (step: TreeStep): string =>
  step.setups.length === 0 ? '' : ` (with: ${step.setups.map((id) => EN.setups[id]).join(', ')})`;

function meantFigure(meant: Meant): string {
  if (meant.kind === 'diameter') {
    const { median, lo90, hi90 } = meant.sizeMm;
    return `${meant.id}, equivalent diameter: ${median.toFixed(2)} mm (${lo90.toFixed(2)} to ${hi90.toFixed(2)})`;
  }
  const { id, value } = meant;
  switch (meant.kind) {
    case 'length':
      return `${id}: ${(value * 1e3).toFixed(2)} mm`;
    case 'resistance':
      return `${id}: ${Number(value.toPrecision(3))} Ω`;
    case 'pressure':
      return `${id}: ${Math.round(value)} Pa`;
    case 'fraction':
      return `${id}: ${(100 * value).toFixed(value < 0.1 ? 1 : 0)} %`;
    case 'number':
      return `${id}: ${value.toFixed(2)}`;
  }
}

/** What the numbers that were entered come to, with the instrument's error. */
export const meantInWords = (entered: readonly Meant[]): readonly string[] =>
  entered.length === 0 ? [] : ['The numbers come to', ...entered.map((meant) => `  - ${meantFigure(meant)}`), ''];

/** "12 min more work and 30 less for goods" */
function difference(expected: Comparison['expected'], plan: Plan): string {
  const more = (value: number): string => `${Math.round(Math.abs(value))}`;
  const word = (value: number): string => (Math.round(value) < 0 ? 'less' : 'more');
  const work = expected.minutes - plan.expected.minutes;
  const goods = expected.goods - plan.expected.goods;
  return `${more(work)} min ${word(work)} work, ${more(goods)} ${word(goods)} for goods`;
}

function comparison({ step, probability, extra, expected }: Comparison, plan: Plan): string {
  const chance =
    step.kind === 'repair' ? `right with ${percent(probability)}` : `shows something with ${percent(probability)}`;
  const dearer =
    extra > 0.5
      ? `a plan that starts with it costs about ${minutes(extra)} more, all counted as the goal says (${difference(expected, plan)})`
      : 'about as dear as far as this search can tell';
  return `${stepName(step)}: ${chance}; ${dearer}.`;
}

function treeLines(tree: PlanTree, indent: string, depth: number): string[] {
  const isEnd = tree.step.kind === 'send away';
  const worth = isEnd
    ? `counts as ${minutes(tree.step.minutes)}`
    : `${minutes(tree.step.minutes)}${withSetups(tree.step)}`;
  const lines = [`${indent}${stepName(tree.step)}, ${worth}`];
  if (depth === 0) return tree.answers.length > 0 ? [...lines, `${indent}  …`] : lines;
  for (const { outcome, probability, next } of tree.answers) {
    const reach = tree.probability * probability;
    if (reach < SHOWN) continue;
    if (next === 'proven') lines.push(`${indent}  ${outcome} (${percent(probability)}): proven`);
    else lines.push(`${indent}  ${outcome} (${percent(probability)}):`, ...treeLines(next, `${indent}    `, depth - 1));
  }
  return lines;
}

export function planInWords(plan: Plan, acknowledged: boolean): string {
  const { next, expected } = plan;
  const cautions = cautionsOfStep(next);
  const text = next.kind === 'check' ? EN.checks[next.id] : undefined;
  const held = next.kind === 'repair' ? 1 - plan.answers.reduce((sum, { probability }) => sum + probability, 0) : 0;
  const suspects = plan.setupFaults.filter(({ probability }) => probability > 0.15);
  return [
    next.kind === 'send away'
      ? `Next: ${stepName(next)}`
      : `Next: ${stepName(next)}, ${minutes(next.minutes)}${withSetups(next)}`,
    '',
    `Believed now: ${causeList(plan.causes, 5)}.`,
    ...suspects.map(
      ({ id, probability }) => `Perhaps the test itself: ${EN.setupFaults[id]}, ${percent(probability)}.`,
    ),
    wrapped(
      `From here to a proven repair: ${minutes(expected.minutes)} of work and ${Math.round(expected.goods)} for goods on average; ` +
        `this plan is at most ${percent(plan.gap)} above the best there can be.`,
    ),
    ...(cautions.length > 0 ? ['', 'Cautions', ...cautions.map((c) => wrapped(c, '  - ', '    '))] : []),
    ...(text === undefined
      ? []
      : acknowledged || cautions.length === 0
        ? ['', 'Steps', ...text.steps.map((s, i) => wrapped(s, `  ${i + 1}. `, '     ')), wrapped(text.note, '  ')]
        : ['', 'The steps are shown once the cautions are acknowledged: add --acknowledge.']),
    ...(plan.answers.length > 0 || held > 0
      ? [
          '',
          'What each answer would change',
          ...(held > 0 ? [`  - held (${percent(held)}): proven, the end`] : []),
          ...plan.answers.map((a) =>
            wrapped(
              `${a.outcome} (${percent(a.probability)}): then ${stepName(a.next)}; ${causeList(a.causes, 3)}`,
              '  - ',
              '    ',
            ),
          ),
        ]
      : []),
    ...(plan.instead.length > 0
      ? ['', 'Why not the usual reflex', ...plan.instead.map((c) => wrapped(comparison(c, plan), '  - ', '    '))]
      : []),
    '',
    'The plan',
    ...treeLines(plan.tree, '  ', DEPTH),
    '',
    plan.unproven.probability > 0.005
      ? wrapped(
          `With ${percent(plan.unproven.probability)} the plan ends without proof, where going on costs more than it is likely to bring; ` +
            `left would be: ${causeList(plan.unproven.causes, 4)}.`,
        )
      : 'The plan goes on until a repair is proven.',
    '',
    wrapped(GENERAL_CAUTION),
  ].join('\n');
}
