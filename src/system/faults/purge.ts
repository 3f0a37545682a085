import { diameter, type FaultKind, share } from './fault.ts';

/** F03, F04, F15: the purge valve. */
export const PURGE_FAULTS: readonly FaultKind[] = [
  {
    kind: 'purge-seeping',
    family: 'F03',
    words: 'purge valve seeps when shut',
    part: 'purgeValve',
    size: diameter('seep', 0.5e-3),
    apply(p, size) {
      p.purge.shutDiameterM = Math.hypot(p.purge.shutDiameterM, size);
    },
  },
  {
    kind: 'purge-stuck-open',
    family: 'F03',
    words: 'purge valve stuck open',
    part: 'purgeValve',
    size: share('share of its full opening that stays', 0.7),
    apply(p, size) {
      p.purge.stuckOpenDiameterM = p.purge.openDiameterM * Math.sqrt(size);
    },
  },
  {
    kind: 'purge-stuck-shut',
    family: 'F04',
    words: 'purge valve stuck shut or no purge flow',
    part: 'purgeValve',
    size: diameter('what still passes when commanded open', 0.05e-3),
    apply(p, size) {
      p.purge.openDiameterM = size;
      p.purge.shutDiameterM = Math.min(p.purge.shutDiameterM, size);
    },
  },
  {
    kind: 'purge-circuit-open',
    family: 'F15',
    words: 'purge valve circuit open: the valve never moves',
    part: 'purgeValve',
    apply(p) {
      p.purge.openDiameterM = p.purge.shutDiameterM;
    },
  },
];
