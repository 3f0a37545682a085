/**
 * What is kept of a growing recording: bins that coarsen with age, the command changes, running sums. Its size and
 * the work of adding a sample do not grow with the length of the recording.
 */
import type { ChannelName, Recording, RecordingNotes } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import type { SensorCharacter } from '../likelihood/observations.ts';
import { type CommandChange, commandChanges } from '../model/command-changes.ts';
import { measuredClip, sensorRails } from '../prepare.ts';
import { type Bin, CHANNEL_NAMES, coarsen, emptyBin, PRESSURES, type PressureName, regrouped } from './bin.ts';
import { PressureWatch } from './pressure-watch.ts';

/** Bins kept at most; enough for a draw, a hold and a release as fine as a whole recording is binned, and some minutes more. */
export const MOST_BINS = 150;
/** Command changes kept exactly; older small ones are forgotten first. */
const MOST_CHANGES = 20;

export const COMMANDS = ['ventClosed', 'purgeDuty', 'isolationOpen', 'pumpOn', 'changeoverToTank'] as const;
export type Commands = Readonly<Record<(typeof COMMANDS)[number], number>>;

/** A change with the commands before and after it. */
export interface KeptChange {
  /** `switch`: a valve or pump that a car without a pump module or sealed tank does not have. */
  readonly kind: CommandChange['kind'] | 'switch';
  readonly timeS: number;
  readonly gapS: number;
  readonly before: Commands;
  readonly after: Commands;
}

/** First samples of a channel that some conditions are taken from. */
const FIRST_SAMPLES = 20;

export class History {
  bins: Bin[] = [];
  readonly changes: KeptChange[] = [];
  readonly present = new Set<ChannelName>();
  firstS = Number.NaN;
  lastS = Number.NEGATIVE_INFINITY;
  samples = 0;
  /** Command changes so far, forgotten ones too. */
  changesSeen = 0;
  /** Samples left out: not later than the last one kept. */
  left = 0;
  readonly sums = new Float64Array(CHANNEL_NAMES.length);
  readonly counts = new Float64Array(CHANNEL_NAMES.length);
  /** The first values of each channel. */
  readonly firsts: readonly number[][] = CHANNEL_NAMES.map(() => []);
  notes: RecordingNotes | undefined;
  readonly pressures: readonly PressureWatch[] = PRESSURES.map(() => new PressureWatch());
  /** Absent where nobody noted the sensor's range. */
  private readonly rails: { low: number; high: number } | undefined;
  /** Last value of each command and when it was seen. */
  private readonly seen = COMMANDS.map(() => ({ timeS: Number.NaN, value: 0 }));

  constructor(car: Car, notes: RecordingNotes | undefined) {
    this.rails = sensorRails(car);
    this.notes = notes;
  }

  /** @param widthS longest bin by the time since the last change */
  add(batch: Recording, widthS: (sinceS: number) => number): void {
    const columns = CHANNEL_NAMES.map((name) => batch.channels[name]);
    for (const name of CHANNEL_NAMES) if (batch.channels[name]) this.present.add(name);
    const pressures = PRESSURES.map((name) => batch.channels[name]);
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
        if (this.firsts[c]!.length < FIRST_SAMPLES) this.firsts[c]!.push(value);
      });
      pressures.forEach((x, k) => {
        const p = x?.[i] ?? Number.NaN;
        if (Number.isFinite(p)) this.pressures[k]!.add(t, p, bin.pressures[k]!);
      });
    }
  }

  /** Merges old bins; their phases must be up to date. */
  coarsen(most: number = MOST_BINS): void {
    while (this.changes.length > MOST_CHANGES) {
      const small = this.changes.findIndex((c) => c.kind === 'purge-step');
      this.changes.splice(small >= 0 ? small : 0, 1);
    }
    const times = this.changes.map((c) => c.timeS);
    coarsen(this.bins, times, most);
  }

  /** Puts the bins on a coarser grid, when it has become known which. */
  regroup(widthS: (sinceS: number) => number): void {
    const times = this.changes.map((c) => c.timeS);
    this.bins = regrouped(this.bins, times, widthS);
  }

  get lastChangeS(): number {
    return this.changes[this.changes.length - 1]?.timeS ?? Number.NEGATIVE_INFINITY;
  }
  /** Changes of the vent and purge valves. */
  get valveChanges(): readonly CommandChange[] {
    return this.changes.filter((c): c is KeptChange & CommandChange => c.kind !== 'switch');
  }
  get commands(): Commands {
    return Object.fromEntries(COMMANDS.map((name, c) => [name, this.seen[c]!.value])) as Commands;
  }
  pressure(name: PressureName): PressureWatch {
    return this.pressures[PRESSURES.indexOf(name)]!;
  }
  private get tank(): PressureWatch {
    return this.pressures[0]!;
  }
  /** Readings of the tank pressure so far, and the last of them [Pa gauge]. */
  get readings(): number {
    return this.tank.readings;
  }
  get lastReadingPa(): number {
    return this.tank.lastPa;
  }
  get character(): SensorCharacter {
    return this.tank.character;
  }
  freezeOnsetS(): number | undefined {
    return this.tank.freezeOnsetS();
  }

  /** Looks anew at the tank sensor's step and noise, and at where it clips. */
  characterise(): { readonly low: number; readonly high: number } {
    const { tank } = this;
    const clip = this.rails
      ? measuredClip(Float64Array.of(tank.low, tank.high), this.rails, tank.character.stepPa)
      : tank.piles();
    tank.characterise(clip);
    return clip;
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
    const found: Pick<KeptChange, 'kind' | 'timeS' | 'gapS'>[] = [];
    COMMANDS.forEach((name, c) => {
      const value = batch.channels[name]?.[i] ?? Number.NaN;
      if (!Number.isFinite(value)) return;
      const last = this.seen[c]!;
      if (Number.isFinite(last.timeS) && value !== last.value) {
        if (name === 'ventClosed' || name === 'purgeDuty') {
          const pair = { timeS: Float64Array.of(last.timeS, t), label: '', channels: {} };
          found.push(...commandChanges({ ...pair, channels: { [name]: Float64Array.of(last.value, value) } }));
        } else if (value > 0.5 !== last.value > 0.5) {
          found.push({ kind: 'switch', timeS: 0.5 * (last.timeS + t), gapS: t - last.timeS });
        }
      }
      this.seen[c] = { timeS: t, value };
    });
    for (const change of found) this.changes.push({ ...change, before, after: this.commands });
    this.changesSeen += found.length;
  }
}
