import { diameter, type FaultKind, share } from './fault.ts';

const LAYOUTS = ['pump-reference'] as const;

/** F17: the leak-check pump module. */
export const PUMP_FAULTS: readonly FaultKind[] = [
  {
    kind: 'pump-weak',
    family: 'F17',
    words: 'leak-check pump weak or battery low',
    part: 'pumpModule',
    size: share('strength that is left', 0.5),
    layouts: LAYOUTS,
    apply(p, size) {
      p.pump.freeFlowM3PerS *= size;
      p.pump.stallPa *= size;
    },
  },
  {
    kind: 'pump-dead',
    family: 'F17',
    words: 'leak-check pump does not run',
    part: 'pumpModule',
    layouts: LAYOUTS,
    apply(p) {
      p.pump.freeFlowM3PerS = 0;
    },
  },
  {
    kind: 'orifice-dirty',
    family: 'F17',
    words: 'reference orifice dirty',
    part: 'referenceOrifice',
    size: diameter('bore that is left', 0.3e-3),
    layouts: LAYOUTS,
    apply(p, size) {
      p.pump.orificeDiameterM = size;
    },
  },
  {
    kind: 'changeover-sticks',
    family: 'F17',
    words: 'change-over valve stays on the orifice',
    part: 'changeoverValve',
    layouts: LAYOUTS,
    apply(p) {
      p.pump.changeoverSticks = true;
    },
  },
  {
    kind: 'changeover-leaks',
    family: 'F17',
    words: 'change-over valve passes beside the orifice',
    part: 'changeoverValve',
    size: diameter('what passes', 0.4e-3),
    layouts: LAYOUTS,
    apply(p, size) {
      p.pump.changeoverShutDiameterM = Math.hypot(p.pump.changeoverShutDiameterM, size);
    },
  },
];
