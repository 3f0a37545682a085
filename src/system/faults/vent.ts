import { diameter, type FaultKind } from './fault.ts';

/** F05, F06, F15: vent valve and what lies before it. */
export const VENT_FAULTS: readonly FaultKind[] = [
  {
    kind: 'vent-not-sealing',
    family: 'F05',
    words: 'vent valve does not seal',
    part: 'ventValve',
    size: diameter('gap when energised', 2e-3),
    apply(p, size) {
      p.vent.valveShutDiameterM = Math.hypot(p.vent.valveShutDiameterM, size);
    },
  },
  {
    kind: 'vent-circuit-open',
    family: 'F15',
    words: 'vent valve circuit open: the valve never shuts',
    part: 'ventValve',
    apply(p) {
      p.vent.valveShutDiameterM = p.vent.valveOpenDiameterM;
    },
  },
  {
    kind: 'vent-stuck-shut',
    family: 'F06',
    words: 'vent valve stuck shut',
    part: 'ventValve',
    size: diameter('what still passes', 0.1e-3),
    apply(p, size) {
      p.vent.valveOpenDiameterM = size;
      p.vent.valveShutDiameterM = Math.min(p.vent.valveShutDiameterM, size);
    },
  },
  {
    kind: 'vent-choked',
    family: 'F06',
    words: 'vent filter or path choked by dust, water or insects',
    part: 'ventFilter',
    size: diameter('free way that is left', 1.5e-3),
    apply(p, size) {
      p.vent.filterDiameterM = size;
    },
  },
];
