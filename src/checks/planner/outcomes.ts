/**
 * What can come after a step at a point of the outcome graph: the outcomes, how likely they are, and what follows each at
 * least. Worked out for every step of every point, hence in memory that is used again.
 */
import type { PlanNode } from './node.ts';
import { type Laid, laid, PairBound } from './pair-bound.ts';
import { type PlanProblem, setupSums } from './problem.ts';
import { inSteps } from './two-causes.ts';

/** Outcomes and states rarer than this are left out; outcomes' probability goes to the others. */
const NEGLIGIBLE = 1e-9;
const LIVE = 1e-12;
/** States less likely than this, together with an outcome, add too little to the pairs to be worth the time; leaving pairs out keeps the bound valid. */
const COUNTS = 3e-4;
/** A sum that is above a limit by more than this fraction of it is above it, however it was rounded. */
const SURELY = 1e-7;

export class Outcomes {
  /** Of the step last asked about: the outcomes that can come, their chances, and what follows at least, by place. */
  readonly outcome: number[] = [];
  readonly p: number[] = [];
  readonly low: number[] = [];
  count = 0;
  /** The step's cost with the set-ups that it has to pay. */
  cost = 0;
  private readonly problem: PlanProblem;
  private readonly sums: Float64Array;
  /** Absent until it is asked for: a first plan does not need it. */
  private bound: PairBound | undefined;
  /** No state can cost less: an end may bring a gain. */
  private readonly floor: number;
  private readonly prerequisites: ReadonlySet<number>;
  private readonly ownByPaid = new Map<number, Float64Array>();
  /** By check and outcome: logarithms in steps of the bound's grid, and square roots, of the chances. */
  private readonly logs: readonly (readonly Float64Array[])[];
  private readonly roots: readonly (readonly Float64Array[])[];
  private readonly linearNow = new Map<number, Float64Array>();
  /** Memory for those: it is asked for at every point, and lists are dear to make. */
  private readonly linearMemory: Float64Array[] = [];
  private readonly linear: Float64Array;
  private readonly here: Laid;
  private readonly after: Laid;
  private readonly weights: Float64Array;

  constructor(problem: PlanProblem) {
    this.problem = problem;
    this.sums = setupSums(problem);
    this.floor = Math.min(0, ...problem.ends.flatMap(({ cost }) => [...cost]));
    this.prerequisites = new Set(problem.checks.flatMap((check) => check.after));
    this.logs = problem.checks.map(({ likelihood }) => likelihood.map((p) => p.map((x) => inSteps(Math.log(x)))));
    this.roots = problem.checks.map(({ likelihood }) => likelihood.map((p) => p.map((x) => Math.sqrt(x))));
    this.here = laid(problem.states);
    this.after = laid(problem.states);
    this.weights = new Float64Array(problem.states);
    this.linear = new Float64Array(problem.states);
  }

  /** Makes the bound from pairs of causes, for this point and all that can follow it, or makes it better. */
  improveBound(root: PlanNode, rounds: number): void {
    this.bound ??= new PairBound(this.problem, root, this.own(root.setups));
    this.bound.improve(rounds);
  }

  /** What no plan can beat at a point, which is laid out. */
  least(node: PlanNode): number {
    this.lay(node);
    const own = this.own(node.setups);
    const linear = this.linearBy(node, node.setups);
    let base = 0;
    let line = 0;
    for (let s = 0; s < own.length; s++) {
      base += node.belief[s]! * own[s]!;
      line += node.belief[s]! * linear[s]!;
    }
    return Math.max(base, this.bound ? line + this.bound.pairs(this.here) : base);
  }

  /** Lays out a point: the next questions are about its steps. */
  lay({ belief }: PlanNode): void {
    const { here } = this;
    this.linearNow.clear();
    here.count = 0;
    for (let s = 0; s < belief.length; s++) {
      const b = belief[s]!;
      if (b <= LIVE) continue;
      here.log[s] = inSteps(Math.log(b));
      here.root[s] = Math.sqrt(b);
      here.live[here.count++] = s;
    }
  }

  /**
   * Looks at what can come after a step at the point laid out.
   *
   * @param below what a step must cost less than to be of interest
   * @returns false for a step that cannot be taken yet, that changes nothing here, or that costs as much at least
   */
  look(node: PlanNode, action: number, below: number): boolean {
    this.count = 0;
    return action < this.problem.checks.length ? this.check(node, action, below) : this.repair(node, action);
  }

  private check(node: PlanNode, k: number, below: number): boolean {
    const { here, after, weights, linear } = this;
    const { likelihood, after: before, setups, cost } = this.problem.checks[k]!;
    for (let n = 0; n < before.length; n++) if (node.done[before[n]!] === 0) return false;
    if (!this.prerequisites.has(k) && !this.tells(likelihood)) return false;
    const paid = node.setups | setups;
    const own = this.own(paid);
    linear.set(this.linearBy(node, paid));
    if (this.bound) for (let s = 0; s < linear.length; s++) linear[s]! += this.bound.releasedBy(k, s);
    this.cost = cost + this.sums[setups & ~node.setups]!;
    const limit = below - this.cost + SURELY * Math.abs(below);
    let total = 0;
    let least = 0;
    for (let o = 0; o < likelihood.length; o++) {
      const given = likelihood[o]!;
      const log = this.logs[k]![o]!;
      const root = this.roots[k]![o]!;
      after.count = 0;
      for (let n = 0; n < here.count; n++) {
        const s = here.live[n]!;
        const w = node.belief[s]! * given[s]!;
        weights[s] = w;
        if (w < COUNTS) continue;
        after.live[after.count++] = s;
        after.log[s] = here.log[s]! + log[s]!;
        after.root[s] = here.root[s]! * root[s]!;
      }
      if (!this.add(o, own, linear)) continue;
      const n = this.count - 1;
      total += this.p[n]!;
      least += this.p[n]! * this.low[n]!;
      if (least + this.floor * (1 - total) > limit) return false;
    }
    for (let n = 0; n < this.count; n++) this.p[n]! /= total;
    return true;
  }

  private repair(node: PlanNode, action: number): boolean {
    const { here, after, weights } = this;
    const { fixes, setups, cost } = this.problem.repairs[action - this.problem.checks.length]!;
    let fixed = 0;
    after.count = 0;
    for (let n = 0; n < here.count; n++) {
      const s = here.live[n]!;
      weights[s] = 0;
      if (fixes[s] === 1) {
        fixed += node.belief[s]!;
        continue;
      }
      weights[s] = node.belief[s]!;
      if (weights[s]! < COUNTS) continue;
      after.log[s] = here.log[s]!;
      after.root[s] = here.root[s]!;
      after.live[after.count++] = s;
    }
    if (fixed <= NEGLIGIBLE) return false;
    const paid = node.setups | setups;
    this.cost = cost + this.sums[setups & ~node.setups]!;
    this.add(0, this.own(paid), this.linearBy(node, paid));
    return true;
  }

  /** One outcome with the weights as they now are: its chance, and what follows at least. False when it cannot come. */
  private add(outcome: number, own: Float64Array, linear: Float64Array): boolean {
    const { weights, here, count } = this;
    let p = 0;
    let base = 0;
    let line = 0;
    for (let n = 0; n < here.count; n++) {
      const s = here.live[n]!;
      const w = weights[s]!;
      p += w;
      base += w * own[s]!;
      line += w * linear[s]!;
    }
    if (p <= NEGLIGIBLE) return false;
    const low = Math.max(base, this.bound ? line + this.bound.pairs(this.after) : base);
    this.outcome[count] = outcome;
    this.p[count] = p;
    this.low[count] = low / p;
    this.count = count + 1;
    return true;
  }

  private tells(likelihood: readonly Float64Array[]): boolean {
    const { live, count } = this.here;
    for (let o = 0; o < likelihood.length; o++) {
      const p = likelihood[o]!;
      let low = 1;
      let high = 0;
      for (let n = 0; n < count; n++) {
        const chance = p[live[n]!]!;
        if (chance < low) low = chance;
        if (chance > high) high = chance;
      }
      if (high - low > NEGLIGIBLE) return true;
    }
    return false;
  }

  /** What each state costs someone who knows it: the cheapest repair with its set-ups, or the cheapest end. */
  private own(paid: number): Float64Array {
    let known = this.ownByPaid.get(paid);
    if (known) return known;
    known = new Float64Array(this.problem.states).fill(Number.POSITIVE_INFINITY);
    for (const { cost, setups, fixes } of this.problem.repairs) {
      const whole = cost + this.sums[setups & ~paid]!;
      for (let s = 0; s < known.length; s++) if (fixes[s] === 1 && whole < known[s]!) known[s] = whole;
    }
    for (const { cost } of this.problem.ends) {
      for (let s = 0; s < known.length; s++) if (cost[s]! < known[s]!) known[s] = cost[s]!;
    }
    this.ownByPaid.set(paid, known);
    return known;
  }

  /** Linear part of the bound after a step at the point now laid out, which pays set-ups at most; worked out once for each. */
  private linearBy({ done }: PlanNode, paid: number): Float64Array {
    let known = this.linearNow.get(paid);
    if (!known) {
      known = this.linearMemory[this.linearNow.size] ??= new Float64Array(this.problem.states);
      known.set(this.own(paid));
      this.bound?.toLinear(known, { done, setups: paid }, this.sums);
      this.linearNow.set(paid, known);
    }
    return known;
  }
}
