import { faultKind } from '../../../system/faults/catalogue.ts';
import type { Text } from '../../text/en.ts';
import type { PaintWords } from '../picture/painter.ts';
import type { RunView } from '../state/run-view.ts';
import { carbonMass } from '../state/summary.ts';
import { FLOW_SAID_KG_PER_S, type ValveState, valveState } from '../state/valve-state.ts';
import type { Formats } from './use-formats.ts';

type Words = Text['drawing'];

export function valveWords(state: ValveState, words: Words, formats: Formats): string {
  if (state.kind === 'partOpen' || state.kind === 'pulsing')
    return words.valve[state.kind](formats.percent(state.share));
  return words.valve[state.kind];
}

/** Which passage tells the state of a part. */
export function passageOf(view: RunView, part: string): string | undefined {
  const own = view.network.passages.filter((p) => p.part === part && !p.id.startsWith('leak.') && p.kind !== 'relief');
  return (own.find((p) => p.id === 'changeover') ?? own[0])?.id;
}

/** What is wrong in the run that is shown, as it stands beside the part that has it: what, and how much. */
function faultOf(view: RunView, words: Words, formats: Formats): { readonly name: string; readonly size: string } {
  const fault = view.run.request.faults[0];
  if (fault === undefined) return { name: '', size: '' };
  const kind = faultKind(fault.kind);
  const size = fault.size ?? kind.size?.typical;
  return {
    name: words.faultsShort[kind.kind] ?? kind.words,
    size: kind.size === undefined || size === undefined ? '' : formats.size(kind, size),
  };
}

/** What a label's state line says. */
export function stateOf(view: RunView, labelId: string, words: Words, formats: Formats): string {
  if (labelId.startsWith('fault')) {
    const { name, size } = faultOf(view, words, formats);
    return labelId === 'fault' ? `${name} ${size}`.trim() : labelId === 'fault-name' ? name : size;
  }
  if (labelId.startsWith('flow.')) {
    const flow = view.flowKgPerS(labelId.slice('flow.'.length));
    return Math.abs(flow) < FLOW_SAID_KG_PER_S ? '' : formats.flow(flow);
  }
  if (labelId === 'canister') {
    const { heldKg, mostKg } = carbonMass(view);
    return words.ofMost(formats.mass(heldKg), formats.mass(mostKg));
  }
  const reading = view.reading(labelId);
  if (reading !== undefined) return formats.pressure(reading);
  if (labelId === 'cap' || labelId === 'fillerFlap') {
    return view.command('fillerOpen') > 0 || view.command('nozzleOn') > 0 ? words.valve.open : words.valve.shut;
  }
  const passage = passageOf(view, labelId);
  const state = passage === undefined ? undefined : valveState(view, passage);
  if (state === undefined) return '';
  if (labelId === 'changeoverValve')
    return state.kind === 'shut' || state.kind === 'stuckShut' || state.kind === 'seeps'
      ? words.valve.toOrifice
      : words.valve.toTank;
  return valveWords(state, words, formats);
}

export const paintWords = (words: Words, formats: Formats): PaintWords => ({
  pressure: formats.pressure,
  pressureNumber: formats.pressureNumber,
  level: (share) => words.full(formats.percent(share)),
  share: formats.percent,
  vapour: (m3) => words.vapourSpace(formats.volume(m3)),
  state: (view, id) => stateOf(view, id, words, formats),
});
