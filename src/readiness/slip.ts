import type { CarStatus, ReadCode } from '../recording/bus/capture-reading.ts';
import { evapInUseRatio } from './in-use-ratio.ts';
import type { Inspection, InspectionRule } from './inspection.ts';
import { LOCAL_RULES_CAUTION } from './words.ts';

export interface SlipLine {
  readonly what: string;
  readonly value: string;
}

const VERDICT_WORDS = {
  pass: 'would pass by this rule',
  fail: 'would fail by this rule',
  reject: 'would be sent away: monitors have not run',
  'no-test': 'no on-board inspection by this rule',
  'cannot-tell': 'cannot tell: something was not read',
} as const;

const listOrNone = (items: readonly string[]): string => (items.length === 0 ? 'none' : items.join(', '));

/**
 * The inspection slip of a hand-over: codes by status, lamp, monitors, counts since clear, rule and its date. A car that fails
 * must be told its codes, the systems by name and the lamp's state (40 CFR 85.2223).
 */
export function inspectionSlip(
  rule: InspectionRule,
  inspection: Inspection,
  status: CarStatus,
  codes: readonly ReadCode[],
  codesRead: readonly ReadCode['status'][],
): { readonly lines: readonly SlipLine[]; readonly caution: string } {
  const not = 'not read';
  const of = (wanted: ReadCode['status']): string =>
    codesRead.includes(wanted)
      ? listOrNone(codes.filter(({ status: is }) => is === wanted).map(({ code }) => code))
      : not;
  const { sinceClear } = status;
  const supported = sinceClear?.monitors.filter((monitor) => monitor.supported) ?? [];
  const ratio = evapInUseRatio(status.inUse);
  const lines: SlipLine[] = [
    { what: 'Confirmed codes', value: of('confirmed') },
    { what: 'Pending codes', value: of('pending') },
    { what: 'Permanent codes', value: of('permanent') },
    {
      what: 'Lamp',
      value: sinceClear?.lampOn === undefined ? not : sinceClear.lampOn ? 'commanded on' : 'not commanded',
    },
    {
      what: 'Monitors that have run',
      value: sinceClear === undefined ? not : listOrNone(supported.filter((m) => m.complete).map((m) => m.name)),
    },
    {
      what: 'Monitors that have not run',
      value: sinceClear === undefined ? not : listOrNone(supported.filter((m) => !m.complete).map((m) => m.name)),
    },
    {
      what: 'Warm-ups since clear',
      value:
        status.warmUpsSinceClear === undefined
          ? not
          : `${status.warmUpsSinceClear}${status.warmUpsSinceClear === 255 ? ' or more' : ''}`,
    },
    {
      what: 'Distance since clear',
      value: status.distanceSinceClearM === undefined ? not : `${Math.round(status.distanceSinceClearM / 1000)} km`,
    },
    { what: 'Evaporative monitor in use', value: ratio === undefined ? not : ratio.words },
    { what: 'Rule', value: `${rule.name}, as of ${rule.asOf} (${rule.mark}: ${rule.source})` },
    {
      what: 'By that rule',
      value: [
        VERDICT_WORDS[inspection.verdict],
        ...inspection.reasons,
        ...inspection.missing.map((what) => `missing: ${what}`),
      ].join('; '),
    },
  ];
  return { lines, caution: LOCAL_RULES_CAUTION };
}
