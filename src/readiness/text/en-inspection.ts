import { MONITORS, type MonitorName } from '../../recording/bus/monitor-status.ts';
import { EVAP_MONITOR_IDS } from '../../recording/bus/test-results.ts';
import { LEAST_RATIO_SMALL_LEAK } from '../in-use-ratio.ts';
import type { InspectionWords } from './readiness-words.ts';

export const INSPECTION_EN: InspectionWords = {
  monitors: {
    ...(Object.fromEntries(MONITORS.map((name) => [name, name])) as Record<MonitorName, string>),
    'later filter': 'particulate filter',
  },
  testMonitor: (id) => EVAP_MONITOR_IDS[id],
  verdict: {
    pass: 'would pass by this rule',
    fail: 'would fail by this rule',
    reject: 'would be sent away: monitors have not run',
    'no-test': 'no on-board inspection by this rule',
    'cannot-tell': 'cannot tell: something was not read',
  },
  reason: (reason) => {
    switch (reason.kind) {
      case 'too-old':
        return `model year ${reason.modelYear} is before ${reason.firstModelYear}: no on-board inspection by this rule`;
      case 'lamp':
        return reason.codeCount === undefined
          ? 'the lamp is commanded on'
          : `the lamp is commanded on for ${reason.codeCount} code${reason.codeCount === 1 ? '' : 's'}`;
      case 'permanent-waived':
        return `permanent ${reason.codes.join(', ')} does not count any more: enough warm-ups and distance since clear`;
      case 'permanent':
        return `permanent ${reason.codes.join(', ')} is stored and goes only after its monitor has run and passed`;
      case 'not-run':
        return `${reason.monitors.length} monitor${reason.monitors.length === 1 ? ' has' : 's have'} not run (${reason.monitors.join(', ')}), ${reason.allowed} allowed`;
      case 'wrong-one-open':
        return `${reason.monitors.length} monitor${reason.monitors.length === 1 ? ' has' : 's have'} not run (${reason.monitors.join(', ')}), only ${reason.only.join(', ')} may be open`;
      case 'within-allowance':
        return `${reason.monitors.join(', ')} not run, within the ${reason.allowed} allowed`;
      case 'all-run':
        return 'every supported monitor has run';
    }
  },
  gap: (gap) => {
    switch (gap.kind) {
      case 'monitor-status':
        return 'monitor status (service $01 item $01)';
      case 'permanent-codes':
        return 'permanent codes (service $0A)';
      case 'counts-since-clear':
        return 'warm-ups and distance since clear (items $30, $31)';
      case 'spark-ignition':
        return 'monitors of a spark-ignition car: this one reports compression ignition';
      case 'allowance':
        return `an allowance for model year ${gap.modelYear} in the rule`;
    }
  },
  missing: (what) => `missing: ${what}`,
  ratio: ({ completed, eligible, ratio }, f) =>
    ratio === undefined
      ? `no data: ${completed} completed, and no drive yet that counts`
      : `${completed} of ${eligible} drives that count: ${f.number(ratio, 3)} (the rule asks ${f.number(LEAST_RATIO_SMALL_LEAK, 3)} of the 0.5 mm (0.020 in) monitor, from memory); healthy cars too test on some drives only`,
  counted: {
    EVAP: 'evaporative system',
    CAT1: 'catalyst, bank 1',
    CAT2: 'catalyst, bank 2',
    O2S1: 'oxygen sensor, bank 1',
    O2S2: 'oxygen sensor, bank 2',
    SO2S1: 'second oxygen sensor, bank 1',
    SO2S2: 'second oxygen sensor, bank 2',
    EGR: 'recirculation or valve timing',
    AIR: 'secondary air',
  },
  noData: 'no data',
  rule: ({ name, source }) => ({ name, source }),
  ruleMark: {
    confirmed: 'confirmed',
    'secondary source': 'secondary source',
    'from memory': 'from memory',
    'given by the user': 'given by the shop',
  },
  ruleLine: (name, asOf, mark, source) => `${name}, as of ${asOf} (${mark}: ${source})`,
  slip: {
    confirmed: 'Confirmed codes',
    pending: 'Pending codes',
    permanent: 'Permanent codes',
    lamp: 'Lamp',
    run: 'Monitors that have run',
    notRun: 'Monitors that have not run',
    warmUps: 'Warm-ups since clear',
    distance: 'Distance since clear',
    time: 'Engine time since clear',
    distanceWithLamp: 'Distance with lamp on',
    timeWithLamp: 'Engine time with lamp on',
    thisDrive: 'Evaporative monitor, this drive cycle',
    inUse: 'Evaporative monitor in use',
    rule: 'Rule',
    byRule: 'By that rule',
  },
  notRead: 'not read',
  none: 'none',
  orMore: (count) => `${count} or more`,
  lampOn: 'commanded on',
  lampOff: 'not commanded',
  thisDrive: { run: 'has run', 'not-run': 'has not run', 'not-enabled': 'not enabled' },
  caution:
    'Typical values and rules only. The car’s own service information, and the inspection rules of the place where the car is registered, win where they differ: check them before you rely on this.',
};
