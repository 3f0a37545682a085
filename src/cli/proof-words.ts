/** A proof in words for a terminal. */
import type { ComparedCondition } from '../checks/proof/conditions.ts';
import type { BudgetRow } from '../checks/proof/leak-budget.ts';
import type { Proof } from '../checks/proof/proof.ts';
import { type ProofSay, proofInWords } from '../checks/proof/words.ts';
import { EN } from '../checks/text/en.ts';
import type { Interval } from '../diagnosis/finding.ts';
import { GENERAL_CAUTION } from '../report/cautions.ts';
import { PROCEDURE_WORDS } from '../report/words.ts';
import { wrapped } from './finding-words.ts';

const text = EN.proof;
const KELVIN_AT_0C = 273.15;

const percent = (p: number): string =>
  p > 0.999 ? 'over 99.9 %' : p < 0.001 ? 'under 0.1 %' : `${Number((100 * p).toPrecision(p > 0.99 ? 3 : 2))} %`;
const millimetres = (mm: number): string => `${mm.toFixed(2)} mm`;
const interval = ({ median, lo90, hi90 }: Interval): string =>
  `${millimetres(median)} (${lo90.toFixed(2)} to ${hi90.toFixed(2)})`;

function side(condition: ComparedCondition, at: 'before' | 'after'): string | undefined {
  if (condition.what === 'method') {
    const procedures: Readonly<Record<string, string>> = PROCEDURE_WORDS;
    const method = condition[at];
    return procedures[method] ?? EN.checks[method]?.name ?? method;
  }
  if (condition.what === 'volatility') {
    const range = condition[at];
    return range === undefined ? undefined : `${Math.round(range.low / 1e3)} to ${Math.round(range.high / 1e3)} kPa`;
  }
  const value = condition[at];
  if (value === undefined) return undefined;
  return condition.what === 'fuel level' ? percent(value) : `${Math.round(value - KELVIN_AT_0C)} °C`;
}

const SAY: ProofSay = {
  percent,
  diameter: millimetres,
  cause: (id) => EN.causes[id],
  condition: side,
  list: (names) => (names.length < 2 ? names.join() : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`),
};

const listed = (title: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : ['', title, ...lines.map((line) => wrapped(line, '  - ', '    '))];

const size = (measured: Interval | undefined): string => (measured === undefined ? 'not measured' : interval(measured));

const budgetLine = (name: string, { beforeMm, afterMm, removedMm }: BudgetRow): string =>
  `${name}: ${text.values(size(beforeMm), size(afterMm))}${removedMm === undefined ? '' : `; ${text.budget.removed} ${interval(removedMm)}`}`;

export function provedInWords(proof: Proof): string {
  const said = proofInWords(proof, text, SAY);
  const { budget } = proof;
  const rest = budget?.expectedRestMm;
  return [
    said.verdict,
    ...said.against.map((sentence) => wrapped(sentence)),
    '',
    `Equivalent diameter of all openings, 90 % intervals: ${text.values(size(proof.beforeMm), size(proof.afterMm))}.`,
    ...said.figures.map((sentence) => wrapped(sentence)),
    ...listed('Still missing', said.missing),
    ...(budget === null
      ? []
      : listed(text.budget.title, [
          budgetLine(text.budget.whole, budget.whole),
          ...budget.sections.map((row) => budgetLine(row.name, row)),
          ...(budget.sum === undefined ? [] : [budgetLine(text.budget.sum, budget.sum)]),
          ...(rest === undefined
            ? []
            : [
                `${text.budget.expectedRest(interval(rest))} ${budget.rest === undefined ? '' : text.budget.rest[budget.rest]}`.trim(),
              ]),
        ])),
    ...listed(
      'Were both measured alike?',
      proof.conditions.map((condition) => {
        const [before, after] = [side(condition, 'before'), side(condition, 'after')];
        const isSameFill = condition.what === 'volatility' && condition.isSameFill;
        const values = before === undefined || after === undefined ? '' : ` (${text.values(before, after)})`;
        return `${text.conditions[condition.what]}: ${isSameFill ? text.sameFill : text.alike[condition.alike]}${values}`;
      }),
    ),
    '',
    `The car’s own test since the repair: ${text.selfTest[proof.selfTest]}.`,
    ...(proof.beforeMm !== undefined && proof.notCovered.length === 0 ? [text.allCovered] : []),
    '',
    wrapped(GENERAL_CAUTION),
  ].join('\n');
}
