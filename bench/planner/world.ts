/** One car of the benchmark: its fault, the shop's set-up, and what every step would show. */

import { checkById } from '../../src/checks/catalogue/all.ts';
import type { JobProblem } from '../../src/checks/job-problem.ts';
import { outcomeChances } from '../../src/checks/outcome-table.ts';
import { setupCost } from '../../src/checks/planner/problem.ts';
import { ROOT_CAUSES, type RootCauseId } from '../../src/checks/root-causes.ts';
import { SETUP_FAULTS, type SetupFaultId, setupFaultKey } from '../../src/checks/setups.ts';
import { type RandomStream, randomStream } from '../../src/simulation/random.ts';

export interface Bill {
  minutes: number;
  waitMinutes: number;
  goods: number;
  needlessParts: number;
  needlessTanks: number;
}

export class Car {
  readonly cause: RootCauseId;
  readonly bill: Bill = { minutes: 0, waitMinutes: 0, goods: 0, needlessParts: 0, needlessTanks: 0 };
  proven = false;
  private readonly posed: JobProblem;
  private readonly setupFault: SetupFaultId | undefined;
  private readonly figure: (key: string) => number;
  private readonly seed: number;
  private paid = 0;
  private readonly tried = new Set<string>();

  constructor(posed: JobProblem, priors: Float64Array, figure: (key: string) => number, seed: number) {
    this.posed = posed;
    this.figure = figure;
    this.seed = seed;
    const random = randomStream(seed, 1);
    this.cause = ROOT_CAUSES[pick(random, priors)]!.id;
    const faults = SETUP_FAULTS.map((id) => figure(setupFaultKey(id)));
    const fault = pick(random, [1 - faults.reduce((a, b) => a + b, 0), ...faults]);
    this.setupFault = fault === 0 ? undefined : SETUP_FAULTS[fault - 1]!;
  }

  /** Number of the outcome; the same however often and in whatever order it is asked. */
  check(id: string): number {
    const k = this.posed.checks.findIndex((check) => check.id === id);
    this.pay(k, this.posed.problem.checks[k]!.setups);
    const chances = outcomeChances(checkById(id), this.cause, this.setupFault, this.figure);
    return pick(randomStream(this.seed, 100 + k), chances);
  }

  /** Whether it held. */
  repair(id: string): boolean {
    const r = this.posed.repairs.findIndex((repair) => repair.id === id);
    const repair = this.posed.repairs[r]!;
    if (this.tried.has(id)) return false;
    this.tried.add(id);
    this.pay(this.posed.checks.length + r, this.posed.problem.repairs[r]!.setups);
    this.proven = repair.fixes.includes(this.cause);
    if (!this.proven) {
      if (repair.replacesPart) this.bill.needlessParts += 1;
      if (repair.setups.includes('tank lowered')) this.bill.needlessTanks += 1;
    }
    return this.proven;
  }

  private pay(action: number, setups: number): void {
    const price = this.posed.prices[action]!;
    // set-ups are minutes only
    this.bill.minutes += price.minutes + setupCost(this.posed.problem, setups, this.paid);
    this.bill.waitMinutes += price.waitMinutes;
    this.bill.goods += price.goods;
    this.paid |= setups;
  }
}

export function pick(random: RandomStream, weights: ArrayLike<number>): number {
  let total = 0;
  for (let i = 0; i < weights.length; i++) total += weights[i]!;
  let u = random.uniform() * total;
  for (let i = 0; i < weights.length; i++) {
    u -= weights[i]!;
    if (u < 0) return i;
  }
  return weights.length - 1;
}
