/**
 * The slip for an inspection: the car's own word, rule and date, verdict, what is missing, and how the monitor gets to run. A
 * car that fails must be told its codes, the systems by name and the lamp's state (40 CFR 85.2223).
 */
import { statusLines, verdictLines } from '../../readiness/slip.ts';
import { type ReadinessFigures, readinessFigures } from '../../readiness/text/figures.ts';
import { NBSP } from '../numbers.ts';
import { carName, type Desk, dayAndMinute } from './desk.ts';
import { type Block, type Part, type Section, text, titled } from './document.ts';
import type { HandOverMonitor } from './hand-over.ts';
import { INSPECTION_SLIP_WORDS, type InspectionSlipWords } from './words/inspection-words.ts';

function figuresOf({ given, words }: Desk): ReadinessFigures {
  return readinessFigures({
    temperature: given.units.temperature === 'degC' ? '°C' : '°F',
    distance: given.units.length === 'in' ? 'mi' : 'km',
    decimalSign: words.numbers.decimalSign,
    space: NBSP,
  });
}

/** One column of values, or two where the car was read before and after the repair. */
function said(desk: Desk, monitor: HandOverMonitor, slip: InspectionSlipWords, figures: ReadinessFigures): Section {
  const columns = monitor.readings.map((reading) => [
    { what: slip.readAt, value: `${dayAndMinute(reading.at)} UTC` },
    {
      what: slip.from,
      value: reading.fileName === undefined ? slip.byHand : slip.capture(reading.fileName),
    },
    ...statusLines(reading, slip.readiness, figures),
  ]);
  const title = slip.sections.said;
  const [first, ...others] = columns;
  if (first === undefined) return { title, blocks: [text('body', slip.notRead)] };
  if (others.length === 0)
    return { title, blocks: [{ kind: 'facts', rows: first.map(({ what, value }) => [what, value]) }] };
  const names = [...new Set(columns.flatMap((lines) => lines.map(({ what }) => what)))];
  const { facts } = desk.words;
  return {
    title,
    blocks: [
      {
        kind: 'table',
        columns: [
          { title: slip.item, share: 0.32 },
          { title: facts.before, share: 0.34 },
          { title: facts.after, share: 0.34 },
        ],
        rows: names.map((name) => [
          name,
          ...columns.map((lines) => lines.find(({ what }) => what === name)?.value ?? slip.readiness.notRead),
        ]),
      },
    ],
  };
}

function byRule(monitor: HandOverMonitor, slip: InspectionSlipWords, figures: ReadinessFigures): Section {
  const { rule, inspection } = monitor;
  const { name, source } = slip.readiness.rule(rule);
  const rows: readonly (readonly [string, string])[] =
    inspection === null
      ? [
          [
            slip.readiness.slip.rule,
            slip.readiness.ruleLine(name, rule.asOf, slip.readiness.ruleMark[rule.mark], source),
          ],
          [slip.readiness.slip.byRule, slip.noModelYear],
        ]
      : verdictLines(rule, inspection, slip.readiness, figures).map(({ what, value }) => [what, value]);
  return {
    title: slip.sections.rule,
    blocks: [
      { kind: 'facts', rows },
      { kind: 'caution', lead: slip.readiness.caution, items: [] },
    ],
  };
}

function codes({ words }: Desk, monitor: HandOverMonitor, slip: InspectionSlipWords): Section {
  const newest = monitor.readings.at(-1);
  const rows = [...new Set(newest?.codes.map(({ code }) => code))].map((code) => [
    code,
    words.codeMeanings[code] ?? words.otherCode,
  ]);
  return {
    title: slip.sections.codes,
    blocks:
      rows.length === 0
        ? [text('body', slip.noCodes)]
        : [
            {
              kind: 'table',
              columns: [
                { title: words.facts.code, share: 0.18 },
                { title: words.facts.meaning, share: 0.82 },
              ],
              rows,
            },
            text('quiet', words.codesAsRead),
          ],
  };
}

function plan(monitor: HandOverMonitor, slip: InspectionSlipWords, figures: ReadinessFigures): readonly Section[] {
  if (monitor.plan === null) return [];
  const { attempts, pattern, remarks, avoid, zone } = monitor.plan;
  const { readiness, columns } = slip;
  const table: readonly Block[] =
    attempts.length === 0
      ? []
      : [
          {
            kind: 'table',
            columns: [
              { title: columns.start, share: 0.3 },
              { title: columns.parked, share: 0.22 },
              { title: columns.air, share: 0.16, align: 'right' },
              { title: columns.chance, share: 0.16, align: 'right' },
              { title: columns.byThen, share: 0.16, align: 'right' },
            ],
            rows: attempts.map((each) => [
              `${each.date} ${each.clock}`,
              figures.duration(each.parkedBeforeS),
              figures.temperature(each.temperatureK),
              figures.percent(each.probability),
              figures.percent(each.cumulative),
            ]),
          },
          text('quiet', slip.zone(zone)),
          ...titled(
            slip.pattern,
            pattern.map((step) => readiness.step(step, figures)),
          ),
        ];
  return [
    {
      title: slip.sections.plan,
      blocks: [
        ...remarks.map((remark) => text('body', readiness.remark(remark, figures))),
        ...table,
        ...titled(
          slip.avoid,
          avoid.map((each) => readiness.avoid(each, figures)),
        ),
      ],
    },
  ];
}

export function inspectionPart(desk: Desk): Part {
  const { given } = desk;
  const slip = INSPECTION_SLIP_WORDS[given.language];
  const figures = figuresOf(desk);
  const { monitor } = given;
  return {
    id: 'inspection',
    gap: 10,
    title: slip.title,
    subtitle: slip.subtitle(carName(desk), `${dayAndMinute(given.madeAt)} UTC`),
    sections:
      monitor === undefined
        ? [{ title: slip.sections.said, blocks: [text('body', slip.notRead)] }]
        : [
            said(desk, monitor, slip, figures),
            byRule(monitor, slip, figures),
            codes(desk, monitor, slip),
            ...plan(monitor, slip, figures),
          ],
  };
}
