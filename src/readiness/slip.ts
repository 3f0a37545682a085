import type { CarStatus, ReadCode } from '../recording/bus/capture-reading.ts';
import { evapInUseRatio } from './in-use-ratio.ts';
import type { Inspection, InspectionRule, StatedCode } from './inspection.ts';
import type { ReadinessFigures } from './text/figures.ts';
import type { ReadinessWords } from './text/readiness-words.ts';

export interface SlipLine {
  readonly what: string;
  readonly value: string;
}

/** What a car said of itself: the lists of codes that it gave, empty or not, and its status. */
export interface CarsWord {
  readonly status: CarStatus;
  readonly codes: readonly StatedCode[];
  readonly codesRead: readonly ReadCode['status'][];
}

/** Counts are one byte; at its end they stand still. */
const MOST_WARM_UPS = 255;

/** The car's own word, line by line: codes by status, lamp, monitors, counts since clear, in-use ratio. */
export function statusLines(
  { status, codes, codesRead }: CarsWord,
  words: ReadinessWords,
  figures: ReadinessFigures,
): readonly SlipLine[] {
  const { slip, notRead, none } = words;
  const listed = (items: readonly string[]): string => (items.length === 0 ? none : items.join(', '));
  const codesOf = (wanted: ReadCode['status']): string =>
    codesRead.includes(wanted)
      ? listed([...new Set(codes.filter((code) => code.status === wanted).map(({ code }) => code))])
      : notRead;
  const { sinceClear, thisDrive, warmUpsSinceClear } = status;
  const supported = sinceClear?.monitors.filter((monitor) => monitor.supported) ?? [];
  const monitors = (complete: boolean): string =>
    sinceClear === undefined
      ? notRead
      : listed(supported.filter((each) => each.complete === complete).map(({ name }) => words.monitors[name]));
  const evap = thisDrive?.monitors.find(({ name }) => name === 'evaporative system');
  const ratio = evapInUseRatio(status.inUse);
  const count = (value: number | undefined, say: (value: number) => string): string =>
    value === undefined ? notRead : say(value);
  return [
    { what: slip.confirmed, value: codesOf('confirmed') },
    { what: slip.pending, value: codesOf('pending') },
    { what: slip.permanent, value: codesOf('permanent') },
    {
      what: slip.lamp,
      value: sinceClear?.lampOn === undefined ? notRead : sinceClear.lampOn ? words.lampOn : words.lampOff,
    },
    { what: slip.run, value: monitors(true) },
    { what: slip.notRun, value: monitors(false) },
    {
      what: slip.warmUps,
      value: count(warmUpsSinceClear, (n) => (n >= MOST_WARM_UPS ? words.orMore(n) : String(n))),
    },
    { what: slip.distance, value: count(status.distanceSinceClearM, figures.distance) },
    ...(status.timeSinceClearS === undefined
      ? []
      : [{ what: slip.time, value: figures.duration(status.timeSinceClearS) }]),
    ...(status.distanceWithLampM === undefined
      ? []
      : [{ what: slip.distanceWithLamp, value: figures.distance(status.distanceWithLampM) }]),
    ...(status.timeWithLampS === undefined
      ? []
      : [{ what: slip.timeWithLamp, value: figures.duration(status.timeWithLampS) }]),
    ...(evap === undefined
      ? []
      : [
          {
            what: slip.thisDrive,
            value: words.thisDrive[!evap.supported ? 'not-enabled' : evap.complete ? 'run' : 'not-run'],
          },
        ]),
    { what: slip.inUse, value: ratio === undefined ? notRead : words.ratio(ratio, figures) },
  ];
}

/** Rule with its date and mark, and what follows by it. */
export function verdictLines(
  rule: InspectionRule,
  inspection: Inspection,
  words: ReadinessWords,
  figures: ReadinessFigures,
): readonly SlipLine[] {
  const { name, source } = words.rule(rule);
  return [
    { what: words.slip.rule, value: words.ruleLine(name, rule.asOf, words.ruleMark[rule.mark], source) },
    {
      what: words.slip.byRule,
      value: [
        words.verdict[inspection.verdict],
        ...inspection.reasons.map((reason) => words.reason(reason, figures)),
        ...inspection.missing.map((gap) => words.missing(words.gap(gap))),
      ].join('; '),
    },
  ];
}

/**
 * The inspection slip of a hand-over. A car that fails must be told its codes, the systems by name and the lamp's state
 * (40 CFR 85.2223). It is never shown without the caution of `words`.
 */
export const inspectionSlip = (
  rule: InspectionRule,
  inspection: Inspection,
  said: CarsWord,
  words: ReadinessWords,
  figures: ReadinessFigures,
): readonly SlipLine[] => [...statusLines(said, words, figures), ...verdictLines(rule, inspection, words, figures)];
