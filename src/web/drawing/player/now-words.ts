import type { LeakPlace } from '../../../system/parameters.ts';
import type { Text } from '../../text/en.ts';
import type { RunView } from '../state/run-view.ts';
import { carbonMass } from '../state/summary.ts';
import { FLOW_SAID_KG_PER_S, valveState } from '../state/valve-state.ts';
import { passageOf, valveWords } from './state-words.ts';
import type { Formats } from './use-formats.ts';

/** A change of pressure that is no rest, Pa/s. Judgement: 0.03 kPa a minute. */
const MOVES_PA_PER_S = 0.5;
/** Reading and truth that differ by more than the noise, Pa. Judgement. */
const DIFFERS_PA = 120;

const SPOKEN_VALVES = ['purgeValve', 'ventValve', 'changeoverValve', 'isolationValve', 'fillLimitValve'] as const;

const capital = (words: string): string => words.charAt(0).toLocaleUpperCase() + words.slice(1);

/** The picture in words: valves, flows, pressure, carbon, at the time the view stands at. */
export function nowSentences(view: RunView, text: Text, formats: Formats, aroundS: number): readonly string[] {
  const words = text.drawing;
  const said: string[] = [valves(view, text, formats)];
  const flows = flowSentences(view, text, formats);
  said.push(...(flows.length > 0 ? flows : [words.now.still]));

  const at = view.timeS;
  view.moveTo(Math.max(0, at - aroundS));
  const before = view.gaugePa('tank') ?? 0;
  const fromS = view.timeS;
  view.moveTo(at);
  const now = view.gaugePa('tank') ?? 0;
  const rate = at > fromS ? (now - before) / (at - fromS) : 0;
  const perMinute = formats.pressure(Math.abs(rate) * 60);
  const trend =
    Math.abs(rate) < MOVES_PA_PER_S
      ? words.now.holds
      : rate > 0
        ? words.now.rises(perMinute)
        : words.now.falls(perMinute);
  said.push(words.now.tank(formats.pressure(now), trend));

  const reading = view.reading('tankPressure');
  if (reading !== undefined && Math.abs(reading - now) > DIFFERS_PA) {
    said.push(words.now.sensorWrong(formats.pressure(reading), formats.pressure(now)));
  }
  const { heldKg, mostKg } = carbonMass(view);
  said.push(words.now.carbon(formats.mass(heldKg), formats.mass(mostKg)));
  return said;
}

function valves(view: RunView, text: Text, formats: Formats): string {
  const words = text.drawing;
  const states = SPOKEN_VALVES.flatMap((part) => {
    const passage = passageOf(view, part);
    const state = passage === undefined ? undefined : valveState(view, passage);
    return state === undefined ? [] : [{ part, state }];
  });
  const [purge, vent] = ['purgeValve', 'ventValve'].map((part) => states.find((s) => s.part === part)?.state.kind);
  const bothShut = purge === 'shut' && vent === 'shut';
  const rest = states.filter(
    ({ part, state }) =>
      !(bothShut && (part === 'purgeValve' || part === 'ventValve')) &&
      !(part === 'fillLimitValve' && state.kind === 'open'),
  );
  const parts = rest.map(({ part, state }) => {
    const name = words.parts[part].replaceAll('\u00ad', '');
    const isTurned = state.kind === 'open' || state.kind === 'partOpen' || state.kind === 'stuckOpen';
    const told =
      part === 'changeoverValve'
        ? isTurned
          ? words.valve.toTank
          : words.valve.toOrifice
        : valveWords(state, words, formats);
    return words.now.valve(name, told);
  });
  const list = parts.length === 0 ? '' : `${capital(parts.join(', '))}.`;
  return bothShut ? `${words.now.bothShut}${list === '' ? '' : ` ${list}`}` : list;
}

function flowSentences(view: RunView, text: Text, formats: Formats): string[] {
  const words = text.drawing.now;
  const out: string[] = [];
  if (view.command('nozzleOn') > 0) out.push(words.filling);
  const flows = view.network.passages
    .map((passage) => ({ passage, flow: view.flowKgPerS(passage.id) }))
    .filter(({ flow }) => Math.abs(flow) > FLOW_SAID_KG_PER_S)
    .sort((a, b) => Math.abs(b.flow) - Math.abs(a.flow));
  for (const { passage, flow } of flows) {
    const amount = formats.flow(flow);
    if (passage.id.startsWith('leak.')) {
      const place = text.drawing.places[passage.id.slice('leak.'.length) as LeakPlace];
      out.push(flow < 0 ? words.airIn(place, amount) : words.gasOut(place, amount));
    } else if (passage.kind === 'relief') out.push(words.relief(amount));
    else if (passage.id === 'purge') {
      const isShut = view.command('purgeDuty') === 0;
      out.push(flow < 0 ? words.purgeBack(amount) : isShut ? words.seep(amount) : words.purge(amount));
    } else if (passage.id === 'vent') out.push(flow < 0 ? words.ventIn(amount) : words.ventOut(amount));
    else if (passage.kind === 'pump') out.push(words.pump(amount));
    else if (passage.id === 'filler') out.push(flow < 0 ? words.fillerIn(amount) : words.filler(amount));
    else if (passage.id === 'vapourLine' && flow > 0) out.push(words.line(amount));
  }
  return out;
}
