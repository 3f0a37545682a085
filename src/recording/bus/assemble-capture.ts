import { findQuality } from '../quality.ts';
import type { ChannelName, Recording, RecordingNotes } from '../recording.ts';
import type { SensorOwner } from '../sensor-volts.ts';
import { shiftNotes, ventAt } from '../vent-by-hand.ts';
import { idInWords } from './address.ts';
import type { BusLog } from './bus-log.ts';
import type { LineCounts } from './capture-counts.ts';
import type { CaptureReading, ReadCode, ReadFreezeFrame } from './capture-reading.ts';
import { captureWarnings } from './capture-warnings.ts';
import type { ControlUnit } from './control-unit.ts';
import { DATA_ITEMS, dataItem, PRESSURE_ITEMS } from './data-items.ts';
import { mergeSeries } from './merge-series.ts';
import { type PressureOptions, pickPressure, type Series } from './pick-pressure.ts';
import type { CaptureClock } from './stamps.ts';
import { CODE_STATUS, type CodeStatus } from './trouble-codes.ts';
import { carStatus, readUnit } from './unit-status.ts';
import { shutTimes } from './vent-from-draw.ts';

export interface CaptureOptions extends PressureOptions {
  readonly fileName: string;
  readonly notes?: RecordingNotes;
  /** Its sensor range tells clipped from true readings. */
  readonly car?: SensorOwner;
  readonly mostSamples?: number;
}

export interface CaptureSource {
  readonly log: BusLog;
  readonly clock: CaptureClock;
  readonly counts: LineCounts;
}

/** Of several units that give an item the one with the most samples, the lowest identifier first. */
function bestSeries(units: readonly ControlUnit[], id: number): { unit: ControlUnit; series: Series } | undefined {
  let best: ControlUnit | undefined;
  for (const unit of units) {
    const count = unit.samples.get(id)?.times.length ?? 0;
    if (count > (best?.samples.get(id)?.times.length ?? 0)) best = unit;
  }
  if (best === undefined) return undefined;
  const { times, values } = best.samples.get(id)!;
  return { unit: best, series: { timeS: times.values(), values: values.values() } };
}

/** A recording, codes, readiness and counters from what was said on the bus. */
export function assembleCapture(source: CaptureSource, options: CaptureOptions): CaptureReading {
  const { log, clock, counts } = source;
  const units = [...log.units.values()].sort((a, b) => a.id - b.id);
  const remarks: string[] = [];
  const series = new Map<ChannelName, Series>();
  for (const { id, channel } of DATA_ITEMS) {
    const best = channel === undefined ? undefined : bestSeries(units, id);
    if (channel !== undefined && best !== undefined) series.set(channel, best.series);
  }
  const pressureOf = (id: number): Series | undefined => bestSeries(units, id)?.series;
  const { picked, wideGauge } = pickPressure(
    pressureOf(PRESSURE_ITEMS.narrow),
    pressureOf(PRESSURE_ITEMS.absolute),
    pressureOf(PRESSURE_ITEMS.wide),
    series.get('barometricPa'),
    options,
    remarks,
  );
  if (picked !== undefined) series.set('tankPressureGaugePa', picked.series);
  addVent(series, options.notes, log, remarks);
  const recording = makeRecording(series, options);
  const codes = readCodeLists(units);
  const merged = recording?.merged;
  const backward = units.reduce((sum, unit) => sum + unit.backward, 0);
  const report: CaptureReading['report'] = {
    fileName: options.fileName,
    bytes: counts.bytes,
    lines: counts.lines,
    frames: counts.frames,
    diagnosticFrames: log.frames,
    requests: log.requests,
    skipped: [...counts.skipped].map(([reason, { count, firstLines, example }]) => ({
      reason,
      count,
      firstLines,
      ...(example === undefined ? {} : { example }),
    })),
    stamps: clock.meaning,
    ...(log.firstS === undefined ? {} : { firstTimeS: log.firstS }),
    pauses: log.pauses,
    items: DATA_ITEMS.flatMap(({ id, name, unit, channel }) => {
      const best = bestSeries(units, id);
      const as = id === picked?.item ? 'tankPressureGaugePa' : channel;
      return best === undefined
        ? []
        : [{ id, name, unit, samples: best.series.timeS.length, ...(as === undefined ? {} : { channel: as }) }];
    }),
    backwardSamples: backward,
    samplesBeyondLimit: log.beyondLimit,
    largestShiftS: merged?.largestShiftS ?? 0,
    mergedSamples: merged?.merged ?? 0,
    warnings: captureWarnings({ log, clock, counts, units, backward, hasPressure: picked !== undefined, remarks }),
  };
  return {
    ...(recording === undefined
      ? {}
      : { recording: recording.recording, quality: findQuality(recording.recording, options.car?.pressureSensor) }),
    units: units
      .filter((unit) => unit.assembler.counts.messages > 0 || unit.assembler.counts.consecutive > 0)
      .map(readUnit),
    codes,
    codesRead: Object.values(CODE_STATUS).filter((status) =>
      units.some((unit) => unit.codeLists[status] !== undefined),
    ),
    freezeFrames: units.flatMap(readFreezeFrames),
    status: carStatus(units),
    results: units.flatMap((unit) => [...unit.results.values()]),
    ...(wideGauge === undefined ? {} : { wideGauge }),
    report,
  };
}

function makeRecording(series: Map<ChannelName, Series>, options: CaptureOptions) {
  const leading = leadingChannel(series);
  if (leading === undefined) return undefined;
  const merged = mergeSeries(series, leading);
  if (merged.timeS.length < 2) return undefined;
  const firstS = merged.timeS[0]!;
  const { notes } = options;
  const recording: Recording = {
    timeS: merged.timeS.map((t) => t - firstS),
    channels: merged.channels,
    label: options.fileName,
    ...(notes === undefined ? {} : { notes: shiftNotes(notes, firstS) }),
  };
  return { recording, merged };
}

/** The vent's command from what the notes say; without them a reader is told what its absence does. */
function addVent(
  series: Map<ChannelName, Series>,
  notes: RecordingNotes | undefined,
  log: BusLog,
  remarks: string[],
): void {
  const pressure = series.get('tankPressureGaugePa');
  const purge = series.get('purgeDuty');
  if (pressure === undefined) return;
  const byHand = notes?.ventShutS ?? [];
  if (byHand.length > 0) {
    series.set('ventClosed', { timeS: pressure.timeS, values: ventAt(pressure.timeS, byHand) });
    remarks.push('the vent’s command was marked by hand; the car does not tell it');
    return;
  }
  if (purge === undefined) return;
  const shut = shutTimes(pressure, purge);
  if (shut.length === 0) return;
  const clock = (t: number): string => `${(t - (log.firstS ?? 0)).toFixed(1)} s`;
  const words = shut
    .map(({ fromS, toS }) => `${clock(fromS)} to ${toS === undefined ? 'the end' : clock(toS)}`)
    .join(', ');
  if (notes?.procedure !== 'vacuum-draw') {
    remarks.push(
      `the vent valve’s command is among no data items of the standard; purge pulls the tank down (${words}): if the vent was shut for a self-test then, say in the notes that the procedure is a vacuum draw, else this looks like a blocked vent`,
    );
    return;
  }
  series.set('ventClosed', { timeS: pressure.timeS, values: ventAt(pressure.timeS, shut) });
  remarks.push(
    `the vent was taken as shut from ${words}, as the notes say that this is a vacuum draw; the car does not tell`,
  );
}

/** The tank pressure, else the channel with the most samples. */
function leadingChannel(series: ReadonlyMap<ChannelName, Series>): ChannelName | undefined {
  if (series.has('tankPressureGaugePa')) return 'tankPressureGaugePa';
  let best: ChannelName | undefined;
  for (const [name, { timeS }] of series)
    if (timeS.length > (best === undefined ? 0 : series.get(best)!.timeS.length)) best = name;
  return best;
}

function readCodeLists(units: readonly ControlUnit[]): ReadCode[] {
  return units.flatMap((unit) =>
    (Object.entries(unit.codeLists) as [CodeStatus, readonly string[]][]).flatMap(([status, codes]) =>
      codes.map((code) => ({ code, status, unit: idInWords(unit.id, unit.extended) })),
    ),
  );
}

function readFreezeFrames(unit: ControlUnit): ReadFreezeFrame[] {
  return [...unit.freezeFrames.values()].map(({ number, code, items }) => ({
    unit: idInWords(unit.id, unit.extended),
    number,
    ...(code === undefined ? {} : { code }),
    items: [...items].map(([id, value]) => ({ id, name: dataItem(id)!.name, value, unit: dataItem(id)!.unit })),
  }));
}
