import { diameter, type FaultKind } from './fault.ts';

/** F12, F13: between tank and canister. */
export const TANK_VENT_FAULTS: readonly FaultKind[] = [
  {
    kind: 'vapour-line-blocked',
    family: 'F13',
    words: 'vapour line blocked or pinched',
    part: 'vapourLine',
    size: diameter('free way that is left', 0.4e-3),
    apply(p, size) {
      p.tankVent.lineDiameterM = size;
    },
  },
  {
    kind: 'fill-limit-stuck-shut',
    family: 'F12',
    words: 'fill-limit valve stuck shut',
    part: 'fillLimitValve',
    apply(p) {
      p.tankVent.fillLimitStuck = 'shut';
    },
  },
  {
    kind: 'fill-limit-stuck-open',
    family: 'F12',
    words: 'fill-limit valve stuck open: never floats shut',
    part: 'fillLimitValve',
    apply(p) {
      p.tankVent.fillLimitStuck = 'open';
    },
  },
  {
    kind: 'rollover-stuck-shut',
    family: 'F12',
    words: 'rollover valve stuck shut',
    part: 'rolloverValve',
    apply(p) {
      p.tankVent.rolloverDiameterM = 0;
    },
  },
];
