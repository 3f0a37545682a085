/**
 * How the cost of every step under every cause is shared out among pairs of causes, and the prices that go with it; made
 * better by following what each pair would do with its shares. Any split gives a valid bound, a good one a high bound.
 */
import type { PlanProblem, Situation } from './problem.ts';
import { countUses, newTables, solve, type TwoCauses, telling } from './two-causes.ts';

/** Causes less likely than this get no pairs. */
const RARE = 1e-4;
/** Checks whose outcomes differ by less between two causes do not tell them apart. */
const SAME = 1e-9;
/** What a check's share counts at the start besides how well it tells. */
const SOME = 0.02;
/** First step of the shares' logarithms per use, each time they are made better, and by what steps shorten from round to round. */
const PACE = 1.4;
const COOLING = 0.96;
/** Weight of the last round in the mean over rounds. */
const LATEST = 0.2;
/** Share of the last rounds in the uses that are followed. */
const MEMORY = 0.55;
/** More uses than this count as this many. */
const MOST_USES = 3;
/** Pace of the price of doing a check more than once, and of the shares of set-ups, against the pace of the rest. */
const ONCE_PACE = 0.6;
const SETUP_PACE = 4;
/** Part of an earlier check's cost that a later one bears at the start and at most; pace of its price against the rest. */
const FIRST_BORNE = 0.2;
const MOST_BORNE = 0.9;
const FOLLOW_PACE = 2;
/** Sweeps of a pair's table in the first and in the other rounds. */
const FIRST_SWEEPS = 8;
const SWEEPS = 1;
const ENOUGH = 0.01;

/** A check that another one must come before. */
export interface Following {
  readonly check: number;
  readonly before: number;
}

/** One way of sharing out. */
export interface Split {
  /** Cost by place. */
  readonly costs: Float64Array;
  /** Price of doing a check more than once, by check and state. */
  readonly once: Float64Array;
  /** By following and state, what of the earlier check's cost the later one bears. */
  readonly borne: readonly Float64Array[];
}

export class CostSplit {
  readonly pairs: readonly TwoCauses[];
  readonly followings: readonly Following[];
  /**
   * The mean over the last rounds, which counts: what the pairs cost is concave in how it is shared out, so the mean of
   * shares that swing about the best ones is better than they are.
   */
  readonly mean: Split;
  private readonly now: Split;
  private readonly problem: PlanProblem;
  private readonly at: Situation;
  private readonly actions: number;
  /** By place: action times states plus state. */
  private readonly whose: Int32Array;
  private readonly share: Float64Array;
  private readonly uses: Float64Array;
  private readonly smoothed: Float64Array;
  /** Cost by action and state before prices. */
  private readonly basic: Float64Array;
  /** By set-up: its share in the cost of each action under each state. */
  private readonly setupShare: readonly Float64Array[];
  private round = 0;

  /**
   * @param own what each state costs someone who knows it
   * @param foreign by state, bits of set-ups that are unpaid and that no repair of it needs
   */
  constructor(problem: PlanProblem, at: Situation, own: Float64Array, foreign: Int32Array) {
    this.problem = problem;
    this.at = at;
    const { states, checks, repairs, ends } = problem;
    this.actions = checks.length + repairs.length + 1;
    this.basic = new Float64Array(this.actions * states);
    for (let s = 0; s < states; s++) {
      checks.forEach(({ cost }, k) => {
        this.basic[k * states + s] = cost;
      });
      repairs.forEach(({ cost }, r) => {
        this.basic[(checks.length + r) * states + s] = cost;
      });
      this.basic[(this.actions - 1) * states + s] = Math.max(0, Math.min(...ends.map((e) => e.cost[s]!)) - own[s]!);
    }
    const laidOut = this.laidOut();
    this.pairs = laidOut.pairs;
    this.whose = laidOut.whose;
    this.share = laidOut.share;
    this.uses = new Float64Array(this.share.length);
    this.smoothed = new Float64Array(this.share.length);
    this.followings = checks.flatMap(({ after }, check) =>
      after.flatMap((before): Following[] => {
        if (at.done[check] !== 0 || at.done[before] !== 0) return [];
        return [{ check, before }];
      }),
    );
    this.setupShare = problem.setupCosts.map((_, bit) => this.evenShare(bit, foreign));
    this.now = {
      costs: new Float64Array(this.share.length),
      once: new Float64Array(checks.length * states),
      borne: this.followings.map(({ before }) => new Float64Array(states).fill(FIRST_BORNE * checks[before]!.cost)),
    };
    this.shareOut();
    const { costs, once, borne } = this.now;
    this.mean = { costs: costs.slice(), once: once.slice(), borne: borne.map((price) => price.slice()) };
  }

  /** All pairs with a place for every cost in them; shares to start from. */
  private laidOut(): Pick<CostSplit, 'pairs'> & { readonly whose: Int32Array; readonly share: Float64Array } {
    const { states } = this.problem;
    const whose: number[] = [];
    const share: number[] = [];
    const place = (action: number, state: number, weight: number): number => {
      whose.push(action * states + state);
      share.push(weight);
      return share.length - 1;
    };
    const pairs: TwoCauses[] = [];
    for (let i = 0; i < states; i++) {
      for (let j = i + 1; j < states; j++) if (this.isPair(i, j)) pairs.push(this.pair(i, j, place));
    }
    return { pairs, whose: Int32Array.from(whose), share: Float64Array.from(share) };
  }

  /** Better shares and prices, by so many rounds. */
  improve(rounds: number): void {
    const { problem, at, pairs, uses, smoothed, share, whose, basic, followings } = this;
    const { costs, once, borne } = this.now;
    const { states } = problem;
    const mean = new Float64Array(basic.length);
    for (let r = 0; r < rounds; r++, this.round++) {
      uses.fill(0);
      for (const pair of pairs) {
        solve(pair, costs, this.round === 0 ? FIRST_SWEEPS : SWEEPS, ENOUGH);
        countUses(pair, at.belief[pair.i]!, at.belief[pair.j]!, uses);
      }
      mean.fill(0);
      for (let m = 0; m < uses.length; m++) {
        const now = Math.min(MOST_USES, uses[m]!);
        smoothed[m] = this.round === 0 ? now : MEMORY * smoothed[m]! + (1 - MEMORY) * now;
        mean[whose[m]!]! += smoothed[m]! * share[m]!;
      }
      const pace = PACE * COOLING ** r;
      for (let m = 0; m < uses.length; m++) {
        share[m] = share[m]! * Math.exp(pace * (smoothed[m]! - mean[whose[m]!]!)) + 1e-7;
      }
      for (let x = 0; x < once.length; x++) {
        const raised = (basic[x]! + once[x]!) * Math.exp(ONCE_PACE * pace * (mean[x]! - 1));
        once[x] = Math.max(0, raised - basic[x]!);
      }
      for (let f = 0; f < followings.length; f++) {
        const { check, before } = followings[f]!;
        const price = borne[f]!;
        for (let s = 0; s < states; s++) {
          // done more often than what must come before it: it bears more
          const more = mean[check * states + s]! - mean[before * states + s]!;
          const most = MOST_BORNE * basic[before * states + s]!;
          price[s] = Math.min(most, price[s]! * Math.exp(FOLLOW_PACE * pace * more));
        }
      }
      for (const part of this.setupShare) this.shiftSetup(part, mean, SETUP_PACE * pace, states);
      this.shareOut();
      this.follow(Math.max(LATEST, 2 / (this.round + 2)));
    }
  }

  /** Takes what is shared out now into the mean, with this weight. */
  private follow(weight: number): void {
    const { mean, now } = this;
    mix(mean.costs, now.costs, weight);
    mix(mean.once, now.once, weight);
    for (let f = 0; f < mean.borne.length; f++) mix(mean.borne[f]!, now.borne[f]!, weight);
  }

  /** True where two causes count and no repair removes both. */
  private isPair(i: number, j: number): boolean {
    const { belief } = this.at;
    if (Math.min(belief[i]!, belief[j]!) < RARE) return false;
    return !this.problem.repairs.some(({ fixes }) => fixes[i] === 1 && fixes[j] === 1);
  }

  private pair(i: number, j: number, place: (action: number, state: number, weight: number) => number): TwoCauses {
    const { checks, repairs } = this.problem;
    const { belief, done } = this.at;
    const [bi, bj] = [belief[i]!, belief[j]!];
    const wasted = (state: number, other: number): number[] =>
      repairs.flatMap(({ fixes }, r) => {
        const action = checks.length + r;
        if (done[action] !== 0 || fixes[other] !== 1 || fixes[state] === 1) return [];
        return [place(action, state, belief[other]!)];
      });
    const told = checks.flatMap(({ likelihood }, k) => {
      if (done[k] !== 0 || likelihood.every((p) => Math.abs(p[i]! - p[j]!) < SAME)) return [];
      // by how well it tells: 1 less the overlap of what it shows under either
      const weight = SOME + 1 - likelihood.reduce((sum, p) => sum + Math.sqrt(p[i]! * p[j]!), 0);
      return [telling(likelihood, i, j, place(k, i, bj * weight), place(k, j, bi * weight))];
    });
    return {
      i,
      j,
      checks: told,
      wastedFirst: wasted(i, j),
      wastedSecond: wasted(j, i),
      endFirst: place(this.actions - 1, i, bj),
      endSecond: place(this.actions - 1, j, bi),
      ...newTables(),
    };
  }

  /** A set-up's cost at the start: the same part for each step that needs it and leaves the state as it is. */
  private evenShare(bit: number, foreign: Int32Array): Float64Array {
    const { states, checks, repairs } = this.problem;
    const part = new Float64Array(this.actions * states);
    const all = [...checks, ...repairs];
    for (let s = 0; s < states; s++) {
      if (((foreign[s]! >>> bit) & 1) === 0) continue;
      const users = all.flatMap(({ setups }, a) => {
        const removes = a >= checks.length && repairs[a - checks.length]!.fixes[s] === 1;
        return this.at.done[a] === 0 && ((setups >>> bit) & 1) === 1 && !removes ? [a] : [];
      });
      for (const a of users) part[a * states + s] = 1 / users.length;
    }
    return part;
  }

  /** Towards the steps that are taken more often. */
  private shiftSetup(part: Float64Array, mean: Float64Array, pace: number, states: number): void {
    for (let s = 0; s < states; s++) {
      let total = 0;
      for (let x = s; x < part.length; x += states) {
        if (part[x] === 0) continue;
        part[x] = part[x]! * Math.exp(pace * Math.min(1, mean[x]!)) + 1e-9;
        total += part[x]!;
      }
      if (total > 0) for (let x = s; x < part.length; x += states) part[x]! /= total;
    }
  }

  private shareOut(): void {
    const { problem, basic, setupShare, share, whose, followings } = this;
    const { costs, once, borne } = this.now;
    const { states } = problem;
    const total = Float64Array.from(basic);
    for (let x = 0; x < once.length; x++) total[x]! += once[x]!;
    setupShare.forEach((part, bit) => {
      const cost = problem.setupCosts[bit]!;
      for (let x = 0; x < total.length; x++) total[x]! += cost * part[x]!;
    });
    for (let f = 0; f < followings.length; f++) {
      const { check, before } = followings[f]!;
      const price = borne[f]!;
      for (let s = 0; s < states; s++) {
        total[check * states + s]! += price[s]!;
        total[before * states + s]! -= price[s]!;
      }
    }
    const sum = new Float64Array(total.length);
    for (let m = 0; m < share.length; m++) sum[whose[m]!]! += share[m]!;
    for (let m = 0; m < share.length; m++) {
      share[m]! /= sum[whose[m]!]!;
      costs[m] = total[whose[m]!]! * share[m]!;
    }
  }
}

function mix(mean: Float64Array, now: Float64Array, weight: number): void {
  for (let m = 0; m < mean.length; m++) mean[m]! += weight * (now[m]! - mean[m]!);
}
