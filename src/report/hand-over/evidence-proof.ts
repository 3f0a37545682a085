/** The proof as evidence: verdict and figures, before and after on the same axes, leak budget, causes that it does not cover. */
import type { BudgetRow, LeakBudget } from '../../checks/proof/leak-budget.ts';
import { missingInWords } from '../../checks/proof/words.ts';
import type { Interval } from '../../diagnosis/finding.ts';
import { tracesTogether } from '../traces-together.ts';
import { beforeAfterFigure } from './before-after-figure.ts';
import { type Desk, proofSay } from './desk.ts';
import { type Block, listed, type Section, text } from './document.ts';
import { comparedRecordings } from './not-verified.ts';
import { provenSentences } from './outcome.ts';

export function proofSection(desk: Desk): Section {
  const { given, words, checks } = desk;
  const { worked } = given;
  const own = given.proof?.words.trim() ?? '';
  const [verdict, ...rest] = provenSentences(desk);
  return {
    title: words.sections.proof,
    blocks: [
      ...(verdict === undefined ? [] : [text('strong', verdict)]),
      ...listed(rest),
      ...(own === '' ? [] : [text('body', own)]),
      ...traces(desk),
      ...(worked === null || worked.proof.budget === null ? [] : budget(desk, worked.proof.budget)),
      ...(worked === null ? [] : uncovered(desk, worked.proof)),
      ...(worked === null ? [] : [text('body', words.selfTestSince(checks.proof.selfTest[worked.proof.selfTest]))]),
    ],
  };
}

/** Both recordings in one figure, where both sides recorded the same procedure. */
function traces(desk: Desk): readonly Block[] {
  const { given, words, q } = desk;
  const { before, after } = comparedRecordings(given.recordings);
  if (before?.trace == null || after?.trace == null || before.procedure !== after.procedure) return [];
  const together = tracesTogether({ ...before.trace, phases: before.phases }, { ...after.trace, phases: after.phases });
  const moved =
    together.at === null || Math.abs(together.movedS) < 0.5
      ? ''
      : words.figure.moved(q.duration(Math.abs(together.movedS)), together.movedS > 0, words.phases[together.at]);
  return [
    {
      kind: 'figure',
      draw: (width) => beforeAfterFigure(desk, before, together, width),
      key: [words.figure.beforeAfterKey, moved].filter((part) => part !== '').join(' '),
    },
  ];
}

function budget({ given: { units }, words, checks, q }: Desk, given: LeakBudget): readonly Block[] {
  const said = checks.proof.budget;
  // The unit stands in the head, so that a size keeps to one line.
  const cell = (size: Interval | undefined): string =>
    size === undefined ? words.notMeasured : q.intervalNumbers(size);
  const title = (name: string): string => `${name}, ${units.length}`;
  const row = (name: string, { beforeMm, afterMm, removedMm }: BudgetRow): readonly string[] => [
    name,
    cell(beforeMm),
    cell(afterMm),
    removedMm === undefined ? '' : q.intervalNumbers(removedMm),
  ];
  return [
    { kind: 'heading', text: said.title },
    {
      kind: 'table',
      columns: [
        { title: said.where, share: 0.25 },
        { title: title(words.facts.before), share: 0.25 },
        { title: title(words.facts.after), share: 0.25 },
        { title: title(said.removed), share: 0.25 },
      ],
      rows: [
        row(said.whole, given.whole),
        ...given.sections.map((section) => row(checks.words[section.name] ?? section.name, section)),
        ...(given.sum === undefined ? [] : [row(said.sum, given.sum)]),
      ],
    },
    ...(given.repairedMm === undefined ? [] : [text('body', said.repaired(q.interval(given.repairedMm)))]),
    ...(given.expectedRestMm === undefined
      ? []
      : [
          text(
            'body',
            [
              said.expectedRest(q.interval(given.expectedRestMm)),
              given.rest === undefined ? '' : said.rest[given.rest],
            ].join(' '),
          ),
        ]),
    text('quiet', said.lead),
  ];
}

function uncovered(desk: Desk, proof: NonNullable<Desk['given']['worked']>['proof']): readonly Block[] {
  const { given, checks } = desk;
  const { notCovered, beforeMm } = proof;
  if (given.findings.before === null && beforeMm === undefined) return [];
  return [
    text(
      'body',
      notCovered.length === 0
        ? checks.proof.allCovered
        : missingInWords({ code: 'causes not covered', causes: notCovered }, checks.proof, proofSay(desk)),
    ),
  ];
}
