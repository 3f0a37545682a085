/** What a plan costs in minutes and money, and whom it leaves unproven, by root cause: then any belief costs its mean. */
import type { JobProblem, Price } from './job-problem.ts';
import type { Policy } from './planner/policy.ts';
import { SETUPS } from './setups.ts';

/** Lists by state. */
export interface PriceByState {
  readonly minutes: Float64Array;
  readonly waitMinutes: Float64Array;
  readonly goods: Float64Array;
  /** Chance of being sent away unproven. */
  readonly unproven: Float64Array;
}

/** Plans share parts: each part is worked out once. */
export class PlanPrices {
  private readonly posed: JobProblem;
  private readonly known = new Map<Policy, PriceByState>();
  private readonly sentAway: PriceByState;

  constructor(posed: JobProblem) {
    this.posed = posed;
    this.sentAway = {
      minutes: Float64Array.from(posed.sentAway, ({ minutes }) => minutes),
      waitMinutes: Float64Array.from(posed.sentAway, ({ waitMinutes }) => waitMinutes),
      goods: Float64Array.from(posed.sentAway, ({ goods }) => goods),
      unproven: new Float64Array(posed.problem.states).fill(1),
    };
  }

  byState(plan: Policy): PriceByState {
    if (plan.action < 0) return this.sentAway;
    let known = this.known.get(plan);
    if (!known) {
      known = this.step(plan);
      this.known.set(plan, known);
    }
    return known;
  }

  expected(plan: Policy, belief: Float64Array): Price {
    const { minutes, waitMinutes, goods } = this.byState(plan);
    const mean = (values: Float64Array): number => belief.reduce((sum, b, s) => sum + b * values[s]!, 0);
    return { minutes: mean(minutes), waitMinutes: mean(waitMinutes), goods: mean(goods) };
  }

  private step({ action, next, paid }: Policy): PriceByState {
    const { problem, prices, setupPrices } = this.posed;
    const { states, checks, repairs } = problem;
    const check = checks[action];
    const repair = repairs[action - checks.length];
    const own = prices[action]!;
    const open = (check ?? repair!).setups & ~paid;
    const setupMinutes = SETUPS.reduce((sum, _, bit) => sum + ((open >>> bit) & 1) * setupPrices[bit]!.minutes, 0);
    const out = {
      minutes: new Float64Array(states).fill(own.minutes + setupMinutes),
      waitMinutes: new Float64Array(states).fill(own.waitMinutes),
      goods: new Float64Array(states).fill(own.goods),
      unproven: new Float64Array(states),
    };
    const follow = (after: Policy | undefined, chance: (state: number) => number): void => {
      const rest = after ? this.byState(after) : this.sentAway;
      for (let s = 0; s < states; s++) {
        const p = chance(s);
        out.minutes[s]! += p * rest.minutes[s]!;
        out.waitMinutes[s]! += p * rest.waitMinutes[s]!;
        out.goods[s]! += p * rest.goods[s]!;
        out.unproven[s]! += p * rest.unproven[s]!;
      }
    };
    if (check) {
      check.likelihood.forEach((given, o) => {
        follow(next[o], (s) => given[s]!);
      });
    } else follow(next[0], (s) => 1 - repair!.fixes[s]!);
    return out;
  }
}
