import { diameter, type FaultKind, share } from './fault.ts';

const LAYOUTS = ['two-path-purge'] as const;

/** F19: check valves and ejector of a boosted engine. */
export const TWO_PATH_FAULTS: readonly FaultKind[] = [
  {
    kind: 'manifold-check-leaks',
    family: 'F19',
    words: 'manifold check valve leaks back or is fitted the wrong way',
    part: 'manifoldCheckValve',
    size: diameter('gap against its direction', 2e-3),
    layouts: LAYOUTS,
    apply(p, size) {
      p.boost.manifoldCheckShutDiameterM = Math.hypot(p.boost.manifoldCheckShutDiameterM, size);
    },
  },
  {
    kind: 'ejector-check-leaks',
    family: 'F19',
    words: 'ejector check valve leaks back',
    part: 'ejectorCheckValve',
    size: diameter('gap against its direction', 2e-3),
    layouts: LAYOUTS,
    apply(p, size) {
      p.boost.ejectorCheckShutDiameterM = Math.hypot(p.boost.ejectorCheckShutDiameterM, size);
    },
  },
  {
    kind: 'ejector-check-stuck-shut',
    family: 'F19',
    words: 'ejector check valve stuck shut or its hose off',
    part: 'ejectorCheckValve',
    layouts: LAYOUTS,
    apply(p) {
      p.boost.ejectorCheckDiameterM = 0;
      p.boost.ejectorCheckShutDiameterM = 0;
    },
  },
  {
    kind: 'ejector-weak',
    family: 'F19',
    words: 'ejector nozzle cracked or its feed hose off',
    part: 'ejector',
    size: share('suction that is left', 0),
    layouts: LAYOUTS,
    apply(p, size) {
      p.boost.ejectorSuctionPerBoost *= size;
    },
  },
];
