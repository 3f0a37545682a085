/**
 * A lower bound on what any plan costs: besides the right repair of each state, information must be bought.
 *
 * At the end of a plan the state's repair group is known, so the checks, the attempted repairs and the ends together must
 * have given as much information as the belief's entropy over groups. A check used on the part m of the belief gives at
 * most I(m) bits at cost c |m|; a repair that fixes the mass b and is tried in vain on the mass w gives at most
 * (b + w) h(b / (b + w)) bits at cost r w; ending early is taken as revealing all. With a price lambda per bit (a Lagrange
 * multiplier) the least total cost is bounded in closed form for every lambda, because
 *   - I(m) <= sum of m_s D(P(.|s) || q) for every distribution q over outcomes, hence the check's best net gain is at most
 *     the sum of b_s max(0, lambda D_s(q) - c);
 *   - the best w gives a repair the net gain -lambda b log2(1 - 2^(-r / lambda)).
 * Valid for any lambda > 0 and any q; here q is chosen near the best by a few steps. Source: derived here from the chain
 * rule of information and weak duality.
 */
import type { PlanProblem } from './problem.ts';

export interface BitPrice {
  /** Price of a bit, in the problem's cost unit. */
  readonly lambda: number;
  /** Net gain by check and state: without, and with, a share of the set-ups that are still to be paid. */
  readonly bare: readonly (Float64Array | undefined)[];
  readonly charged: readonly (Float64Array | undefined)[];
  /** Set-ups that were unpaid when this was made. */
  readonly unpaid: number;
  /** What an early end reveals, by state: the code's length times the price. */
  readonly code: Float64Array;
  /** The bound's linear part by state, by the set-ups paid. */
  readonly linear: Map<number, Float64Array>;
}

/** Steps towards the best q. */
const STEPS = 4;
const LN2 = Math.LN2;
/** Share of an even spread mixed into the code with which an early end reveals the state. */
const EVEN = 0.05;

export class InformationBound {
  private readonly problem: PlanProblem;
  private readonly groupOf: Int32Array;
  private readonly groups: number;
  /** Sum over outcomes of P log P by check and state [nat]. */
  private readonly negEntropy: readonly Float64Array[];
  private readonly clairByPaid = new Map<number, Float64Array>();

  constructor(problem: PlanProblem) {
    this.problem = problem;
    const { groupOf, groups } = groupStates(problem);
    this.groupOf = groupOf;
    this.groups = groups;
    this.negEntropy = problem.checks.map((check) =>
      Float64Array.from({ length: problem.states }, (_, s) =>
        check.likelihood.reduce((h, p) => h + (p[s]! > 0 ? p[s]! * Math.log(p[s]!) : 0), 0),
      ),
    );
  }

  /** What each state costs someone who knows it: the cheapest repair with its set-ups, or the cheapest end. */
  clairvoyant(paid: number): Float64Array {
    let known = this.clairByPaid.get(paid);
    if (known) return known;
    const { problem } = this;
    known = new Float64Array(problem.states).fill(Number.POSITIVE_INFINITY);
    for (const repair of problem.repairs) {
      let cost = repair.cost;
      const open = repair.setups & ~paid;
      for (let bit = 0; open >>> bit !== 0; bit++) if ((open >>> bit) & 1) cost += problem.setupCosts[bit] ?? 0;
      for (let s = 0; s < problem.states; s++) if (repair.fixes[s] === 1 && cost < known[s]!) known[s] = cost;
    }
    for (const end of problem.ends)
      for (let s = 0; s < problem.states; s++) if (end.cost[s]! < known[s]!) known[s] = end.cost[s]!;
    this.clairByPaid.set(paid, known);
    return known;
  }

  /** Gains of all open checks at a price, with q chosen for this belief. */
  price(lambda: number, belief: Float64Array, isOpen: (check: number) => boolean, paid: number): BitPrice {
    const { checks } = this.problem;
    const unpaid = ~paid;
    const bare: (Float64Array | undefined)[] = [];
    const gains: number[] = [];
    const qs: Float64Array[] = [];
    for (let k = 0; k < checks.length; k++) {
      if (!isOpen(k)) {
        bare.push(undefined);
        gains.push(0);
        qs.push(new Float64Array(0));
        continue;
      }
      const { gain, total, q } = this.bestGain(k, lambda, checks[k]!.cost, belief);
      bare.push(gain);
      gains.push(total);
      qs.push(q);
    }
    const charged = bare.map((gain, k) => {
      const surcharge = gain && this.surcharge(k, gains, unpaid);
      if (!gain || !surcharge) return gain;
      const { cost } = checks[k]!;
      const divergence = this.divergence(k, qs[k]!);
      return Float64Array.from(gain, (g, s) =>
        g > 0 ? Math.max(0, lambda * divergence[s]! - cost - surcharge[s]!) : 0,
      );
    });
    const { groupOf, groups } = this;
    const groupMass = this.groupMass(belief);
    const code = Float64Array.from(
      belief,
      (_, s) => -lambda * Math.log2((1 - EVEN) * groupMass[groupOf[s]!]! + EVEN / groups),
    );
    return { lambda, bare, charged, unpaid, code, linear: new Map() };
  }

  /**
   * @param made prices made for this situation or for one before it
   * @param belief probability by state, summing to 1
   * @param without index of a check done since, or -1
   * @param paid set-ups paid now
   * @param bits entropy of the belief over repair groups, from `entropy`
   */
  lower(made: BitPrice, belief: Float64Array, without: number, paid: number, bits: number): number {
    const clair = this.clairvoyant(paid);
    const linear = this.linear(made, paid);
    const removed = without < 0 ? undefined : this.gainOf(made, without, made.unpaid & paid);
    let base = 0;
    let extra = made.lambda * bits;
    for (let s = 0; s < belief.length; s++) {
      const b = belief[s]!;
      base += b * clair[s]!;
      extra += b * (removed ? linear[s]! + removed[s]! : linear[s]!);
    }
    return extra > 0 ? base + extra : base;
  }

  /** Entropy of a belief over repair groups [bit]. */
  entropy(belief: Float64Array): number {
    let bits = 0;
    for (const m of this.groupMass(belief)) if (m > 0) bits -= m * Math.log(m);
    return bits / LN2;
  }

  private groupMass(belief: Float64Array): Float64Array {
    const mass = new Float64Array(this.groups);
    for (let s = 0; s < belief.length; s++) mass[this.groupOf[s]!]! += belief[s]!;
    return mass;
  }

  private gainOf(made: BitPrice, k: number, newlyPaid: number): Float64Array | undefined {
    return (this.problem.checks[k]!.setups & newlyPaid) !== 0 ? made.bare[k] : made.charged[k];
  }

  /** By state: what attempted repairs can reveal, less what checks and an early end can. */
  private linear(made: BitPrice, paid: number): Float64Array {
    const known = made.linear.get(paid);
    if (known) return known;
    const { problem } = this;
    const { lambda } = made;
    const clair = this.clairvoyant(paid);
    const out = new Float64Array(problem.states);
    for (const repair of problem.repairs) {
      const revealed = (lambda * Math.log1p(-(2 ** (-repair.cost / lambda)))) / LN2;
      for (let s = 0; s < out.length; s++) if (repair.fixes[s] === 1) out[s]! += revealed;
    }
    const newlyPaid = made.unpaid & paid;
    for (let k = 0; k < problem.checks.length; k++) {
      const gain = this.gainOf(made, k, newlyPaid);
      if (gain) for (let s = 0; s < out.length; s++) out[s]! -= gain[s]!;
    }
    for (let s = 0; s < out.length; s++) {
      let ended = 0;
      for (const end of problem.ends) ended = Math.max(ended, made.code[s]! - (end.cost[s]! - clair[s]!));
      out[s]! -= ended;
    }
    made.linear.set(paid, out);
    return out;
  }

  /** D(P(.|s) || q) by state [bit]. */
  private divergence(k: number, q: Float64Array): Float64Array {
    const { likelihood } = this.problem.checks[k]!;
    const logs = Float64Array.from(q, (x) => Math.log(x));
    const d = Float64Array.from(this.negEntropy[k]!);
    for (let o = 0; o < q.length; o++) {
      const p = likelihood[o]!;
      const l = logs[o]!;
      for (let s = 0; s < d.length; s++) if (p[s]! > 0) d[s]! -= p[s]! * l;
    }
    for (let s = 0; s < d.length; s++) d[s] = Math.max(0, d[s]! / LN2);
    return d;
  }

  private bestGain(k: number, lambda: number, cost: number, belief: Float64Array) {
    const { likelihood } = this.problem.checks[k]!;
    const states = belief.length;
    const active = Float64Array.from(belief);
    let best: { gain: Float64Array; total: number; q: Float64Array } | undefined;
    const q = new Float64Array(likelihood.length);
    for (let step = 0; step < STEPS; step++) {
      const target = outcomeMix(likelihood, active);
      if (!target) break;
      const pace = 2 / (step + 2);
      for (let o = 0; o < q.length; o++) q[o]! += pace * (target[o]! - q[o]!);
      const d = this.divergence(k, q);
      let total = 0;
      for (let s = 0; s < states; s++) {
        const g = lambda * d[s]! - cost;
        d[s] = g > 0 ? g : 0;
        active[s] = g > 0 ? belief[s]! : 0;
        if (g > 0) total += belief[s]! * g;
      }
      if (!best || total < best.total) best = { gain: d, total, q: q.slice() };
      if (total <= 0) break;
    }
    return best ?? { gain: new Float64Array(states), total: 0, q };
  }

  /** The check's share of what is still to be paid for set-ups, by state; states whose own repair needs them pay it there. */
  private surcharge(k: number, gains: readonly number[], unpaid: number): Float64Array | undefined {
    const { checks, setupCosts, repairs, states } = this.problem;
    const needed = checks[k]!.setups & unpaid;
    if (needed === 0 || !(gains[k]! > 0)) return undefined;
    const out = new Float64Array(states);
    for (let bit = 0; bit < setupCosts.length; bit++) {
      if (((needed >>> bit) & 1) === 0) continue;
      let all = 0;
      checks.forEach((check, j) => {
        if ((check.setups >>> bit) & 1) all += gains[j]!;
      });
      const share = (setupCosts[bit]! * gains[k]!) / all;
      for (let s = 0; s < states; s++)
        if (!repairs.some((r) => r.fixes[s] === 1 && ((r.setups >>> bit) & 1) === 1)) out[s]! += share;
    }
    return out;
  }
}

/** Outcome distribution under a part of the belief, kept away from zero; undefined for an empty part. */
function outcomeMix(likelihood: readonly Float64Array[], part: Float64Array): Float64Array | undefined {
  let mass = 0;
  for (let s = 0; s < part.length; s++) mass += part[s]!;
  if (mass <= 0) return undefined;
  const floor = 1e-9;
  return Float64Array.from(likelihood, (p) => {
    let x = 0;
    for (let s = 0; s < part.length; s++) x += part[s]! * p[s]!;
    return (x / mass + floor) / (1 + floor * likelihood.length);
  });
}

/** States joined by common repairs are one group: a successful repair does not tell them apart. */
function groupStates(problem: PlanProblem): { groupOf: Int32Array; groups: number } {
  const parent = Int32Array.from({ length: problem.states }, (_, s) => s);
  const rootOf = (s: number): number => {
    let r = s;
    while (parent[r] !== r) r = parent[r]!;
    return r;
  };
  for (const repair of problem.repairs) {
    let first = -1;
    for (let s = 0; s < problem.states; s++) {
      if (repair.fixes[s] !== 1) continue;
      if (first < 0) first = s;
      else parent[rootOf(s)] = rootOf(first);
    }
  }
  const names = new Map<number, number>();
  const groupOf = Int32Array.from({ length: problem.states }, (_, s) => {
    const r = rootOf(s);
    if (!names.has(r)) names.set(r, names.size);
    return names.get(r)!;
  });
  return { groupOf, groups: names.size };
}
