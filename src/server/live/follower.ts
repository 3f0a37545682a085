/**
 * Follows a recording while it grows: the vent's command where the car does not tell it, the phases, the finding. What is
 * learnt later about earlier rows (a vacuum draw shows itself only once it pulls) lets the finding begin again with all
 * rows; that costs one update.
 */

import { GrowingFinding, type GrowingUpdate } from '../../diagnosis/growing/growing-finding.ts';
import { shutTimes } from '../../recording/bus/vent-from-draw.ts';
import { findPhases } from '../../recording/phases.ts';
import { GrowingNumbers } from '../../recording/raw-column.ts';
import {
  CHANNELS,
  type ChannelName,
  type Recording,
  type RecordingNotes,
  type ShutTime,
} from '../../recording/recording.ts';
import { ventAt } from '../../recording/vent-by-hand.ts';
import type { LiveFollow } from '../contract/live.ts';
import type { FollowTask } from './live-tasks.ts';

const NAMES = Object.keys(CHANNELS) as ChannelName[];
/** Rows of which phases are found: so many seconds apart, and where the purge command changes. */
const PHASE_STEP_S = 0.2;
/** A release shows itself within so long (`vent-from-draw.ts`): only older rows have their last word on the vent. */
const RELEASE_SHOWS_S = 3;
/** Batches of rows when the finding begins again: so long around a change of the vent and so long elsewhere. Judgement. */
const FINE_S = 1;
const COARSE_S = 10;
const AFTER_S = 20;

export class Follower {
  readonly #task: FollowTask;
  readonly #timeS = new GrowingNumbers();
  readonly #columns = new Map<ChannelName, GrowingNumbers>();
  #procedure: FollowTask['procedure'];
  #ventMarks: readonly ShutTime[] = [];
  #finding: GrowingFinding | undefined;
  #update: GrowingUpdate | undefined;
  /** Rows that the finding has, and the vent's command as it has it. */
  #given = 0;
  #givenVent: readonly ShutTime[] = [];

  constructor(task: FollowTask) {
    this.#task = task;
    this.#procedure = task.procedure;
  }

  say(procedure: FollowTask['procedure'], ventMarks: readonly ShutTime[]): void {
    if (procedure !== this.#procedure) this.#finding = undefined;
    this.#procedure = procedure;
    this.#ventMarks = ventMarks;
  }

  add({ timeS, channels }: Recording): void {
    const before = this.#timeS.length;
    for (const t of timeS) this.#timeS.push(t);
    for (const name of NAMES) {
      const values = channels[name];
      let column = this.#columns.get(name);
      if (values === undefined && column === undefined) continue;
      if (column === undefined) {
        column = new GrowingNumbers();
        this.#columns.set(name, column);
        for (let i = 0; i < before; i++) column.push(Number.NaN);
      }
      for (let i = 0; i < timeS.length; i++) column.push(values?.[i] ?? Number.NaN);
    }
  }

  /** How it stands with all rows so far. */
  follow(): LiveFollow {
    const whole = this.#whole();
    const ventShut = this.#ventShut(whole);
    // Where the person has said what is done, the command exists from the first row on: its first change is then seen.
    const told: Recording =
      this.#procedure === null || whole.channels.ventClosed !== undefined
        ? whole
        : { ...whole, channels: { ...whole.channels, ventClosed: ventAt(whole.timeS, ventShut) } };
    const update = this.#find(told, ventShut);
    return { phases: findPhases(forPhases(told)), ventShut, finding: update ?? null };
  }

  #whole(): Recording {
    return {
      label: 'live',
      timeS: this.#timeS.values(),
      channels: Object.fromEntries([...this.#columns].map(([name, column]) => [name, column.values()])),
      notes: this.#notes(),
    };
  }

  #notes(): RecordingNotes {
    return this.#procedure === null ? {} : { procedure: this.#procedure };
  }

  #ventShut({ timeS, channels }: Recording): readonly ShutTime[] {
    if (this.#ventMarks.length > 0) return this.#ventMarks;
    const { tankPressureGaugePa: pressure, purgeDuty: purge } = channels;
    if (this.#procedure !== 'vacuum-draw' || pressure === undefined || purge === undefined) return [];
    return shutTimes(present(timeS, pressure), present(timeS, purge));
  }

  /** Rows on which the vent's command no longer changes. */
  #settledRows(timeS: Float64Array): number {
    const isDerived = this.#procedure === 'vacuum-draw' && this.#ventMarks.length === 0;
    const lastS = timeS.at(-1) ?? 0;
    return isDerived ? firstAtOrAfter(timeS, lastS - RELEASE_SHOWS_S) : timeS.length;
  }

  #find(whole: Recording, ventShut: readonly ShutTime[]): GrowingUpdate | undefined {
    const { car, known } = this.#task;
    // Without its procedure a draw would look like a blocked vent, as the bus does not tell the vent's command.
    if (car === null || this.#procedure === null) return undefined;
    const uptoS = whole.timeS[this.#given - 1] ?? Number.NEGATIVE_INFINITY;
    if (this.#finding === undefined || !isSame(this.#givenVent, ventShut, uptoS)) {
      this.#finding = new GrowingFinding(car, { ...known, notes: this.#notes(), label: 'live' });
      this.#given = 0;
    }
    const to = this.#settledRows(whole.timeS);
    for (let at = this.#given; at < to; ) {
      const next = Math.min(to, firstAtOrAfter(whole.timeS, whole.timeS[at]! + stepS(whole.timeS[at]!, ventShut)));
      this.#update = this.#finding.add(between(whole, at, Math.max(at + 1, next)));
      at = Math.max(at + 1, next);
    }
    this.#given = Math.max(this.#given, to);
    this.#givenVent = ventShut;
    return this.#update;
  }
}

/** What comes at once is weighed at once: fine around a change of the vent, as it was when it came. */
const stepS = (atS: number, ventShut: readonly ShutTime[]): number =>
  ventShut.some(({ fromS, toS }) => isNear(atS, fromS) || (toS !== undefined && isNear(atS, toS))) ? FINE_S : COARSE_S;
const isNear = (atS: number, changeS: number): boolean => atS > changeS - COARSE_S && atS < changeS + AFTER_S;

function firstAtOrAfter(timeS: Float64Array, atS: number): number {
  let low = 0;
  let high = timeS.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeS[middle]! < atS) low = middle + 1;
    else high = middle;
  }
  return low;
}

const present = (timeS: Float64Array, values: Float64Array) => {
  const at = [...values.keys()].filter((i) => !Number.isNaN(values[i]!));
  return { timeS: Float64Array.from(at, (i) => timeS[i]!), values: Float64Array.from(at, (i) => values[i]!) };
};

/** The same command in all rows up to a time. */
function isSame(a: readonly ShutTime[], b: readonly ShutTime[], uptoS: number): boolean {
  const upto = (spans: readonly ShutTime[]): string =>
    spans
      .filter(({ fromS }) => fromS <= uptoS)
      .map(({ fromS, toS }) => `${fromS} ${Math.min(toS ?? Number.POSITIVE_INFINITY, uptoS)}`)
      .join();
  return upto(a) === upto(b);
}

function between({ timeS, channels, ...rest }: Recording, from: number, to: number): Recording {
  return {
    ...rest,
    timeS: timeS.subarray(from, to),
    channels: Object.fromEntries(Object.entries(channels).map(([name, values]) => [name, values.subarray(from, to)])),
  };
}

/** Fewer rows: phases are found in all of them anew each time. */
function forPhases(whole: Recording): Recording {
  const { timeS, channels } = whole;
  const { tankPressureGaugePa: pressure } = channels;
  const kept: number[] = [];
  let lastS = Number.NEGATIVE_INFINITY;
  let lastDuty = Number.NaN;
  let lastVent = Number.NaN;
  for (let i = 0; i < timeS.length; i++) {
    // As in a capture that is read: the rows are those of the pressure.
    if (pressure !== undefined && Number.isNaN(pressure[i]!)) continue;
    const duty = channels.purgeDuty?.[i] ?? Number.NaN;
    const vent = channels.ventClosed?.[i] ?? Number.NaN;
    const isChange = (!Number.isNaN(duty) && duty > 0 !== lastDuty > 0) || (!Number.isNaN(vent) && vent !== lastVent);
    if (!isChange && timeS[i]! - lastS < PHASE_STEP_S) continue;
    kept.push(i);
    lastS = timeS[i]!;
    if (!Number.isNaN(duty)) lastDuty = duty;
    if (!Number.isNaN(vent)) lastVent = vent;
  }
  return {
    ...whole,
    timeS: Float64Array.from(kept, (i) => timeS[i]!),
    channels: Object.fromEntries(
      Object.entries(channels).map(([name, values]) => [name, Float64Array.from(kept, (i) => values[i]!)]),
    ),
  };
}
