/**
 * Which items are asked for when. Up to six go into one request (SAE J1979 on CAN): the items that matter for a trace go
 * into every request, slow ones take turns.
 */
const MOST_PER_REQUEST = 6;

/** Items that change while a self-test runs, most wanted first, and items that change over minutes. */
const FAST = [0x32, 0x54, 0x53, 0x2e, 0x0b, 0x0c, 0x06, 0x0d];
const SLOW = [0x2f, 0x33, 0x0f, 0x05, 0x46, 0x07];
/** Of two pressures that say the same the second is not asked for. */
const PRESSURES = [0x32, 0x54, 0x53];
/** A slow item is asked for about once in so many requests (judgement). */
const SLOW_EVERY = 20;
const ASKED_ONE_BY_ONE_SLOW_EVERY = 40;

export interface ScheduledRequest {
  readonly items: readonly number[];
  /** It comes once in so many turns. */
  readonly every: number;
}

/** Items worth asking for, of those that a unit has. */
export function wantedItems(supported: ReadonlySet<number>): {
  readonly fast: readonly number[];
  readonly slow: readonly number[];
} {
  const pressures = PRESSURES.filter((item) => supported.has(item));
  const fast = FAST.filter((item) => supported.has(item) && (!PRESSURES.includes(item) || item === pressures[0]));
  return { fast, slow: SLOW.filter((item) => supported.has(item)) };
}

/** Parts items into requests. `perRequest` is 1 for units that answer only one item at a time. */
export function makeSchedule(fast: readonly number[], slow: readonly number[], perRequest: number): ScheduledRequest[] {
  const most = Math.min(MOST_PER_REQUEST, perRequest);
  const inGroups = (items: readonly number[], every: (k: number) => number): ScheduledRequest[] => {
    const groups: ScheduledRequest[] = [];
    for (let at = 0; at < items.length; at += most)
      groups.push({ items: items.slice(at, at + most), every: every(groups.length) });
    return groups;
  };
  // Asked one by one, the pressure has every second turn and the rest share what is left.
  return most === 1
    ? [
        ...inGroups(fast, (k) => (k === 0 ? 2 : 2 * Math.max(1, fast.length - 1))),
        ...inGroups(slow, () => ASKED_ONE_BY_ONE_SLOW_EVERY),
      ]
    : [...inGroups(fast, (k) => (k === 0 ? 1 : 2)), ...inGroups(slow, () => SLOW_EVERY)];
}

/** Hands the requests out so that each gets its share of the turns. */
export class RequestTurns {
  private readonly requests: readonly ScheduledRequest[];
  private readonly credit: number[];

  constructor(requests: readonly ScheduledRequest[]) {
    this.requests = requests;
    this.credit = requests.map(() => 0);
  }

  next(): ScheduledRequest {
    let best = 0;
    for (let k = 0; k < this.requests.length; k++) {
      this.credit[k]! += 1 / this.requests[k]!.every;
      if (this.credit[k]! > this.credit[best]! + 1e-9) best = k;
    }
    // What is handed out pays for its turn.
    const shares = this.requests.reduce((sum, { every }) => sum + 1 / every, 0);
    this.credit[best]! -= shares;
    return this.requests[best]!;
  }
}
