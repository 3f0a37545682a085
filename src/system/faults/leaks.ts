import { FILLER_OPEN_DIAMETER_M } from '../defaults.ts';
import { LEAK_PLACES } from '../parameters.ts';
import { diameter, type FaultKind } from './fault.ts';

/** Bore that a hose leaves open when it has come off [m]. Source: judgement. */
const HOSE_OFF_DIAMETER_M = 8e-3;

/** F01, F02, F07, F09, F10, F11: holes to ambient. Two holes at one place add by area. */
export const LEAK_FAULTS: readonly FaultKind[] = [
  {
    kind: 'leak',
    family: 'F01 F02 F07 F09 F10 F11',
    words: 'leak to ambient',
    part: 'tankShell',
    size: diameter('hole', 0.5e-3),
    places: LEAK_PLACES,
    apply(p, size, place) {
      p.leakDiametersM[place] = Math.hypot(p.leakDiametersM[place], size);
    },
  },
  {
    kind: 'cap-missing',
    family: 'F01',
    words: 'cap missing or not tightened',
    part: 'cap',
    size: diameter('opening at the neck', FILLER_OPEN_DIAMETER_M),
    apply(p, size) {
      p.leakDiametersM.cap = Math.hypot(p.leakDiametersM.cap, size);
    },
  },
  {
    kind: 'hose-off',
    family: 'F02 F09',
    words: 'hose or line off its port',
    part: 'vapourLine',
    size: diameter('open port', HOSE_OFF_DIAMETER_M),
    places: ['fillerHose', 'vapourLine', 'purgeLine', 'ventSide'],
    apply(p, size, place) {
      p.leakDiametersM[place] = Math.hypot(p.leakDiametersM[place], size);
    },
  },
  {
    kind: 'canister-cracked',
    family: 'F07',
    words: 'canister shell cracked or port snapped',
    part: 'canister',
    size: diameter('crack', 1e-3),
    apply(p, size) {
      p.leakDiametersM.canister = Math.hypot(p.leakDiametersM.canister, size);
    },
  },
];
