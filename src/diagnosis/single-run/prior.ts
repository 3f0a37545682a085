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

/** A cause as a changed prior of a few quantities. */
export interface SingleRunCause<Id extends string> {
  readonly id: Id;
  /** New centre and sd by name; an absent field keeps the sound car's. */
  readonly changes: Readonly<Record<string, { readonly centre?: number; readonly sd?: number }>>;
  /** Quantities set outright by slot: parts that are in one of two states. */
  readonly states?: readonly (readonly [slot: number, value: number])[];
  /** Start values of z worth trying. */
  readonly starts: Readonly<Record<string, readonly number[]>>;
  /** Prior that the evidence is integrated over by steps; its own size or the hole to ambient. */
  readonly key: string;
  /** Prior that carries the hole to ambient under this cause; absent where the run cannot size one. */
  readonly hole?: string;
  /** Where the fault can sit; places in one cause look alike in the run. */
  readonly places: readonly string[];
}

export function priorsUnder<Id extends string>(sound: readonly Prior[], cause: SingleRunCause<Id>): Prior[] {
  return sound.map((p) => ({ ...p, ...cause.changes[p.name] }));
}
