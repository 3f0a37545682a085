/**
 * What is kept of a growing recording: bins that coarsen with age, the command changes, running sums. Its size and
 * the work of adding a sample do not grow with the length of the recording.
 */
import type { ChannelName, Recording, RecordingNotes } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import type { SensorCharacter } from '../likelihood/observations.ts';
import { type CommandChange, commandChanges } from '../model/command-changes.ts';
import { measuredClip, sensorRails } from '../prepare.ts';
import { type Bin, CHANNEL_NAMES, coarsen, emptyBin } from './bin.ts';
import { SensorSample } from './sensor-sample.ts';
import { SpikeWatch } from './spike-watch.ts';
import { StillRun } from './still-run.ts';

/** Bins kept at most; enough for a draw, a hold and a release as fine as a whole recording is binned, and some minutes more. */
export const MOST_BINS = 150;
/** Command changes kept exactly; older small ones are forgotten first. */
const MOST_CHANGES = 20;
/** Smallest standing-out that makes a spike while the sensor's noise is not yet known [Pa]. */
const UNKNOWN_SENSOR: SensorCharacter = { stepPa: 0, noisePa: 8, sampleGapS: 0.1 };

/** A change with the commands before and after it. */
export interface KeptChange extends CommandChange {
  readonly before: Commands;
  readonly after: Commands;
}
export interface Commands {
  readonly ventClosed: number;
  readonly purgeDuty: number;
}

export class History {
  readonly bins: Bin[] = [];
  readonly changes: KeptChange[] = [];
  readonly present = new Set<ChannelName>();
  firstS = Number.NaN;
  lastS = Number.NEGATIVE_INFINITY;
  samples = 0;
  /** Command changes so far, forgotten ones too. */
  changesSeen = 0;
  /** Samples left out: not later than the last one kept. */
  left = 0;
  readings = 0;
  lastReadingPa = Number.NaN;
  readonly sums = new Float64Array(CHANNEL_NAMES.length);
  readonly counts = new Float64Array(CHANNEL_NAMES.length);
  notes: RecordingNotes | undefined;
  private readonly rails: { low: number; high: number };
  private readonly sensor = new SensorSample();
  private readonly spikes = new SpikeWatch();
  private readonly still = new StillRun();
  private known: SensorCharacter | undefined;
  private low = Number.POSITIVE_INFINITY;
  private high = Number.NEGATIVE_INFINITY;
  /** Last value and time of each command that was seen. */
  private vent = { timeS: Number.NaN, value: 0 };
  private duty = { timeS: Number.NaN, value: 0 };

  constructor(car: Car, notes: RecordingNotes | undefined) {
    this.rails = sensorRails(car);
    this.notes = notes;
  }

  /** @param widthS longest bin by the time since the last change */
  add(batch: Recording, widthS: (sinceS: number) => number): void {
    const columns = CHANNEL_NAMES.map((name) => batch.channels[name]);
    for (const name of CHANNEL_NAMES) if (batch.channels[name]) this.present.add(name);
    for (let i = 0; i < batch.timeS.length; i++) {
      const t = batch.timeS[i]!;
      if (!(t > this.lastS)) {
        this.left++;
        continue;
      }
      if (this.samples === 0) this.firstS = t;
      this.samples++;
      this.lastS = t;
      this.watchCommands(batch, i);
      const bin = this.binFor(t, widthS);
      bin.toS = t;
      bin.samples++;
      bin.sumTimeS += t;
      columns.forEach((x, c) => {
        const value = x?.[i] ?? Number.NaN;
        if (!Number.isFinite(value)) return;
        bin.sums[c] = bin.sums[c]! + value;
        bin.counts[c] = bin.counts[c]! + 1;
        this.sums[c] = this.sums[c]! + value;
        this.counts[c] = this.counts[c]! + 1;
      });
      const p = batch.channels.tankPressureGaugePa?.[i] ?? Number.NaN;
      if (Number.isFinite(p)) this.read(t, p, bin);
    }
  }

  /** Merges old bins; their phases must be up to date. */
  coarsen(): void {
    while (this.changes.length > MOST_CHANGES) {
      const small = this.changes.findIndex((c) => c.kind === 'purge-step');
      this.changes.splice(small >= 0 ? small : 0, 1);
    }
    const times = this.changes.map((c) => c.timeS);
    coarsen(this.bins, times, MOST_BINS);
  }

  get lastChangeS(): number {
    return this.changes[this.changes.length - 1]?.timeS ?? Number.NEGATIVE_INFINITY;
  }
  get character(): SensorCharacter {
    return this.known ?? UNKNOWN_SENSOR;
  }
  get commands(): Commands {
    return { ventClosed: this.vent.value, purgeDuty: this.duty.value };
  }
  freezeOnsetS(): number | undefined {
    return this.still.onsetS();
  }

  /** Looks anew at the sensor's step and noise, and at where it clips. */
  characterise(): { readonly low: number; readonly high: number } {
    const extremes = Float64Array.of(this.low, this.high);
    const clip = measuredClip(extremes, this.rails, this.character.stepPa);
    this.known = this.sensor.character(clip);
    return clip;
  }

  private read(t: number, p: number, bin: Bin): void {
    bin.readings++;
    bin.sumReadingTimeS += t;
    bin.sumGaugePa += p;
    this.readings++;
    this.lastReadingPa = p;
    this.low = Math.min(this.low, p);
    this.high = Math.max(this.high, p);
    this.sensor.add(t, p);
    this.still.add(t, p, this.character.stepPa);
    this.spikes.add(t, p, bin, this.character);
  }

  private binFor(t: number, widthS: (sinceS: number) => number): Bin {
    const open = this.bins[this.bins.length - 1];
    // a change lies in the middle of its gap, so a change after the bin's start ends it
    if (open && !(this.lastChangeS > open.fromS) && t < open.fromS + widthS(open.fromS - this.lastChangeS)) return open;
    const bin = emptyBin(t);
    this.bins.push(bin);
    return bin;
  }

  private watchCommands(batch: Recording, i: number): void {
    const before = this.commands;
    const t = batch.timeS[i]!;
    const found: CommandChange[] = [];
    for (const name of ['ventClosed', 'purgeDuty'] as const) {
      const value = batch.channels[name]?.[i] ?? Number.NaN;
      if (!Number.isFinite(value)) continue;
      const last = name === 'ventClosed' ? this.vent : this.duty;
      if (Number.isFinite(last.timeS) && value !== last.value) {
        const pair = { timeS: Float64Array.of(last.timeS, t), label: '', channels: {} };
        found.push(...commandChanges({ ...pair, channels: { [name]: Float64Array.of(last.value, value) } }));
      }
      if (name === 'ventClosed') this.vent = { timeS: t, value };
      else this.duty = { timeS: t, value };
    }
    for (const c of found) this.changes.push({ ...c, before, after: this.commands });
    this.changesSeen += found.length;
  }
}
