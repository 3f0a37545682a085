import type { Passage } from '../../../system/network.ts';
import type { RunView } from './run-view.ts';

/** What a valve is doing, told apart from what it was told. */
export type ValveState =
  | { readonly kind: 'open' | 'shut' | 'stuckOpen' | 'stuckShut' | 'seeps' | 'leaksBack' | 'running' | 'off' }
  | { readonly kind: 'partOpen' | 'pulsing'; readonly share: number };

/** Shares of the full opening between which a valve is neither open nor shut. Judgement. */
const SHUT_BELOW = 2e-3;
const OPEN_ABOVE = 0.85;
const STUCK_BELOW = 0.1;
const STUCK_ABOVE = 0.5;
/** Flow that counts as one, kg/s: a twentieth of what a 0.25 mm hole passes at 1 kPa. */
export const FLOW_SEEN_KG_PER_S = 1e-7;
/** Flow from which one is worth a sentence, an arrow or a number, kg/s: 0.01 L/min of air. */
export const FLOW_SAID_KG_PER_S = 2e-7;

/** The state of the valve in a passage, by its true area and its command. */
export function valveState(view: RunView, passageId: string): ValveState | undefined {
  const passage = view.valves.passages.find((p) => p.id === passageId);
  const sound = view.sound.passages.find((p) => p.id === passageId);
  if (passage === undefined || sound === undefined) return undefined;
  switch (passage.kind) {
    case 'pump': {
      if (view.command(passage.command) === 0) return { kind: 'off' };
      return { kind: passage.freeFlowM3PerS > 0 ? 'running' : 'off' };
    }
    case 'check': {
      const flow = view.flowKgPerS(passageId);
      if (flow < -FLOW_SEEN_KG_PER_S) return { kind: 'leaksBack' };
      if (passage.openAreaM2 === 0) return { kind: 'stuckShut' };
      return { kind: flow > FLOW_SEEN_KG_PER_S ? 'open' : 'shut' };
    }
    case 'orifice':
      return orificeState(view, passage, sound);
    default:
      return undefined;
  }
}

function orificeState(view: RunView, passage: Passage, sound: Passage): ValveState | undefined {
  if (passage.kind !== 'orifice' || sound.kind !== 'orifice') return undefined;
  const drive = sound.actuation;
  if (drive === undefined) return undefined;
  const command = view.command(drive.command);
  const wanted = drive.opens ? command : 1 - command;
  const real = passage.actuation === undefined ? stuckShare(view, passage) : wanted;
  const area = passage.shutAreaM2 + (passage.openAreaM2 - passage.shutAreaM2) * real;
  const open = sound.openAreaM2 > 0 ? area / sound.openAreaM2 : 0;
  if (wanted === 0) {
    if (open < SHUT_BELOW) return { kind: 'shut' };
    return { kind: open > STUCK_ABOVE ? 'stuckOpen' : 'seeps' };
  }
  const seat = passage.shutAreaM2 / (sound.openAreaM2 || 1);
  if (open < Math.min(STUCK_BELOW, 0.5 * wanted)) return { kind: 'stuckShut' };
  if (seat > STUCK_ABOVE) return { kind: 'stuckOpen' };
  if (passage.pulse !== undefined && wanted < 1) return { kind: 'pulsing', share: wanted };
  return open > OPEN_ABOVE ? { kind: 'open' } : { kind: 'partOpen', share: open };
}

/** A valve that no command moves any more; its area is one and the same open or shut. */
function stuckShare(view: RunView, passage: Passage): number {
  return passage.part === 'fillLimitValve' && view.network.fillLimit.stuck === 'shut' ? 0 : 1;
}

/** How far it is drawn open, 0 to 1. */
export function openShare(state: ValveState): number {
  switch (state.kind) {
    case 'open':
    case 'stuckOpen':
    case 'running':
      return 1;
    case 'partOpen':
    case 'pulsing':
      return state.share;
    case 'seeps':
    case 'leaksBack':
      return 0.15;
    default:
      return 0;
  }
}
