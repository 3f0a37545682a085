import { type FaultKind, share } from './fault.ts';

/** Resistance of a bed full of liquid or crumbled grains against a sound one [-]. Source: judgement. */
const FLOODED_RESISTANCE_MOST = 40;

/** F08: the carbon. A cracked shell stands with the leaks. */
export const CANISTER_FAULTS: readonly FaultKind[] = [
  {
    kind: 'canister-flooded',
    family: 'F08',
    words: 'carbon bed flooded or crumbled',
    part: 'carbonBed',
    size: share('share of the bed that is lost', 0.7),
    apply(p, size) {
      p.canister.activeFraction *= 1 - 0.95 * size;
      p.canister.resistanceFactor *= 1 + size * (FLOODED_RESISTANCE_MOST - 1);
      p.canister.loadingTankEnd = 0.98;
      p.canister.loadingVentEnd = 0.98;
    },
  },
  {
    kind: 'canister-saturated',
    family: 'F08',
    words: 'carbon bed saturated with vapour',
    part: 'carbonBed',
    size: share('loading as a share of saturation', 0.95),
    apply(p, size) {
      p.canister.loadingTankEnd = size;
      p.canister.loadingVentEnd = size;
    },
  },
  {
    kind: 'canister-aged',
    family: 'F08',
    words: 'carbon aged: holds less',
    part: 'carbonBed',
    size: share('capacity that is lost', 0.4),
    apply(p, size) {
      p.canister.activeFraction *= 1 - size;
    },
  },
];
