import type { Place } from '../finding.ts';
/** Priors of a reduced model's quantities, each a standard normal variable z in disguise. */
export interface Prior {
  readonly name: string;
  /** Place in the model's array of quantities. */
  readonly slot: number;
  /** `log`: centre exp(sd z); `linear`: centre + sd z. */
  readonly kind: 'log' | 'linear';
  /** In the quantity's own unit; sd in ln for `log`. */
  readonly centre: number;
  readonly sd: number;
}

/** Writes quantities for standard normal values `z`; those without a prior keep `base`. */
export function setQuantities(priors: readonly Prior[], z: ArrayLike<number>, base: Float64Array, q: Float64Array) {
  q.set(base);
  for (let i = 0; i < priors.length; i++) {
    const p = priors[i]!;
    q[p.slot] = p.kind === 'log' ? p.centre * Math.exp(p.sd * z[i]!) : p.centre + p.sd * z[i]!;
  }
}

/** A cause as a changed prior of a few quantities. Several forms of one cause share its id and its prior. */
export interface SingleRunCause<Id extends string> {
  readonly id: Id;
  /** Tells forms of one cause apart; absent where it has a single one. */
  readonly form?: string;
  /** How often the cause looks like this, against its other forms; absent: 1. */
  readonly weight?: number;
  /** New centre and sd by name; an absent field keeps the sound car's. */
  readonly changes: Readonly<Record<string, { readonly centre?: number; readonly sd?: number }>>;
  /** Priors of quantities that a sound car leaves alone. */
  readonly adds?: readonly Prior[];
  /** Quantities set outright by slot: parts that are in one of two states. */
  readonly states?: readonly (readonly [slot: number, value: number])[];
  /** Start values of z worth trying, by name. */
  readonly starts: Readonly<Record<string, readonly number[]>>;
  /** The prior that the evidence is integrated over point by point: the fault's own size, or the hole to ambient. */
  readonly key: string;
  /** The prior that carries the hole to ambient under this cause; absent where the run cannot size one. */
  readonly hole?: string;
  /** Form (or id) of a cause whose fit it shares: it differs in the prior of `key` only. */
  readonly sharesFitOf?: string;
  /** Where the fault can sit; places in one cause look alike in the run. */
  readonly places: readonly Place[];
}

export function priorsUnder<Id extends string>(sound: readonly Prior[], cause: SingleRunCause<Id>): Prior[] {
  const fixed = (cause.states ?? []).map(([slot]) => slot);
  return [...sound.map((p) => ({ ...p, ...cause.changes[p.name] })), ...(cause.adds ?? [])].filter(
    (p) => !fixed.includes(p.slot),
  );
}

/** Quantities before any prior sets them, with the cause's states. */
export function baseUnder<Id extends string>(base: Float64Array, cause: SingleRunCause<Id>): Float64Array {
  const q = Float64Array.from(base);
  for (const [slot, value] of cause.states ?? []) q[slot] = value;
  return q;
}
