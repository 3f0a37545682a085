import { diameter, type FaultKind } from './fault.ts';

const LAYOUTS = ['sealed-tank'] as const;

/** F18: the isolation valve of a sealed tank. */
export const ISOLATION_FAULTS: readonly FaultKind[] = [
  {
    kind: 'isolation-leaks',
    family: 'F18',
    words: 'tank isolation valve leaks when shut',
    part: 'isolationValve',
    size: diameter('gap', 0.5e-3),
    layouts: LAYOUTS,
    apply(p, size) {
      p.isolation.shutDiameterM = Math.hypot(p.isolation.shutDiameterM, size);
    },
  },
  {
    kind: 'isolation-stuck-shut',
    family: 'F18',
    words: 'tank isolation valve stuck shut',
    part: 'isolationValve',
    layouts: LAYOUTS,
    apply(p) {
      p.isolation.openDiameterM = p.isolation.shutDiameterM;
    },
  },
  {
    kind: 'isolation-stuck-open',
    family: 'F18',
    words: 'tank isolation valve stuck open',
    part: 'isolationValve',
    layouts: LAYOUTS,
    apply(p) {
      p.isolation.shutDiameterM = p.isolation.openDiameterM;
    },
  },
];
