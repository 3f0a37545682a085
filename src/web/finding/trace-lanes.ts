/** Recorded and modelled trace, their difference, and the commands, as lanes over one time axis. */
import type { Overlay } from '../../diagnosis/finding.ts';
import type { SheetRecording } from '../../report/sheet.ts';
import type { Readout } from '../recording/chart/cursor-values.tsx';
import { airyRange, type Lane, type Layer, type Shown } from '../recording/chart/lanes.ts';
import { firstAtOrAfter } from '../recording/chart/nearest.ts';
import { column, type Source } from '../recording/chart/source.ts';
import { type Parting, partings } from './finding-parts.ts';

export interface TraceWords {
  readonly pressure: string;
  readonly recorded: string;
  readonly modelled: string;
  readonly rival: string;
  readonly difference: string;
  readonly band: string;
  readonly purge: string;
  readonly vent: string;
  readonly ventStates: readonly [string, string];
}

export interface TraceChart {
  readonly source: Source;
  readonly lanes: readonly Lane[];
  readonly readouts: readonly Readout[];
}

/** A difference of a few pascal must not fill its lane. Judgement. */
const LEAST_DIFFERENCE_PA = 40;
const LEAST_PRESSURE_PA = 200;

/** Value of a command at every time: what it was last set to. */
function heldAt(times: readonly number[], changes: readonly number[], values: readonly number[]): Float32Array {
  return Float32Array.from(times, (t) => {
    const after = firstAtOrAfter(changes, t);
    const k = changes[after] === t ? after : after - 1;
    return values[Math.max(0, k)] ?? Number.NaN;
  });
}

function ends(...lists: readonly ArrayLike<number>[]): readonly [number, number] {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const list of lists)
    for (let k = 0; k < list.length; k++) {
      if (list[k]! < low) low = list[k]!;
      if (list[k]! > high) high = list[k]!;
    }
  return low > high ? [0, 0] : [low, high];
}

const markedTimes = (timeS: readonly number[], spans: readonly Parting[]): readonly number[] =>
  timeS.map((t) => Number(spans.some(({ fromS, toS }) => t >= fromS && t <= toS)));

export function traceChart(
  chosen: Overlay,
  rival: Overlay | null,
  recording: SheetRecording,
  words: TraceWords,
  pressure: Shown,
): TraceChart {
  const { timeS, recordedGaugePa, modelledGaugePa, bandPa } = chosen;
  const values: Float32Array[] = [];
  const add = (list: ArrayLike<number>): number => values.push(Float32Array.from(list)) - 1;
  const recorded = add(recordedGaugePa);
  const modelled = add(modelledGaugePa);
  const low = add(modelledGaugePa.map((pa, k) => pa - bandPa[k]!));
  const high = add(modelledGaugePa.map((pa, k) => pa + bandPa[k]!));
  const apart = add(recordedGaugePa.map((pa, k) => pa - modelledGaugePa[k]!));
  const under = add(bandPa.map((pa) => -pa));
  const over = add(bandPa);
  const parted = add(markedTimes(timeS, partings(chosen)));
  const dashed = rival === null ? null : add(rival.modelledGaugePa);

  // A difference is a length on the unit's scale, not a place on it: no offset, and twice as fine.
  const fine: Shown = { ...pressure, offset: 0, decimals: pressure.decimals + 1 };
  const lines: Layer[] = [
    { kind: 'band', low, high, pen: 'model' },
    ...(dashed === null ? [] : [{ kind: 'line', column: dashed, pen: 'rival' } as const]),
    { kind: 'line', column: modelled, pen: 'model' },
    { kind: 'dots', column: recorded, pen: 'recorded' },
  ];
  const differs = ends(values[apart]!, bandPa, values[under]!);
  const lanes: Lane[] = [
    {
      id: 'trace',
      title: words.pressure,
      shown: pressure,
      range: airyRange(...ends(recordedGaugePa, modelledGaugePa, rival?.modelledGaugePa ?? []), LEAST_PRESSURE_PA),
      layers: lines,
      size: 'tall',
    },
    {
      id: 'difference',
      title: words.difference,
      shown: fine,
      range: airyRange(...differs, LEAST_DIFFERENCE_PA),
      layers: [
        { kind: 'band', low: under, high: over, pen: 'model' },
        { kind: 'marked', column: parted },
        { kind: 'dots', column: apart, pen: 'recorded' },
      ],
      size: 'low',
    },
  ];
  const readouts: Readout[] = [
    { id: 'recorded', title: words.recorded, column: recorded, shown: pressure },
    { id: 'modelled', title: words.modelled, column: modelled, shown: pressure },
    ...(dashed === null ? [] : [{ id: 'rival', title: words.rival, column: dashed, shown: pressure }]),
    { id: 'difference', title: words.difference, column: apart, shown: fine },
    { id: 'band', title: words.band, column: over, shown: fine },
  ];
  const { purgeDuty, ventClosed, timeS: changes } = recording.commands;
  if (purgeDuty?.some((duty) => duty > 0)) {
    const at = add(heldAt(timeS, changes, purgeDuty));
    const shown: Shown = { unit: '%', factor: 0.01, offset: 0, decimals: 0 };
    const most = Math.max(...purgeDuty);
    lanes.push({
      id: 'purge',
      title: words.purge,
      shown,
      range: [-0.08 * most, 1.08 * most],
      layers: [{ kind: 'steps', column: at, pen: 'command' }],
      size: 'low',
    });
    readouts.push({ id: 'purge', title: words.purge, column: at, shown });
  }
  if (ventClosed !== undefined) {
    const at = add(heldAt(timeS, changes, ventClosed));
    const shown: Shown = { unit: '', factor: 1, offset: 0, decimals: 0 };
    lanes.push({
      id: 'vent',
      title: words.vent,
      shown,
      states: words.ventStates,
      range: [-0.15, 1.15],
      layers: [{ kind: 'steps', column: at, pen: 'command' }],
      size: 'switch',
    });
    readouts.push({ id: 'vent', title: words.vent, column: at, shown, states: words.ventStates });
  }
  return {
    source: { timeS: Float64Array.from(timeS), columns: values.map(column), pauses: [] },
    lanes,
    readouts,
  };
}
