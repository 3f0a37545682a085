/** Whether before and after were measured alike. Limits: 3 K as for the repeated flow test; others judgement. */

export interface PressureRange {
  readonly low: number;
  readonly high: number;
}

export interface ProofConditions {
  readonly fuelTemperatureK?: number;
  readonly ambientTemperatureK?: number;
  /** 0..1 */
  readonly fuelLevel?: number;
  /** As stated for the fuel in the tank, Pa. */
  readonly reidVapourPressurePa?: PressureRange;
  /** What was measured: a procedure of a recording, or a check's number. */
  readonly method: string;
}

export type Alike = 'yes' | 'no' | 'unknown';

export type ComparedCondition =
  | { readonly what: 'method'; readonly before: string; readonly after: string; readonly alike: Alike }
  | {
      readonly what: 'fuel temperature' | 'ambient temperature' | 'fuel level';
      readonly before?: number;
      readonly after?: number;
      readonly alike: Alike;
    }
  | {
      readonly what: 'volatility';
      readonly before?: PressureRange;
      readonly after?: PressureRange;
      readonly alike: Alike;
      /** The level did not rise in between, so it is the same fuel, whatever its volatility. */
      readonly isSameFill: boolean;
    };

const LIMITS = [
  ['fuel temperature', 'fuelTemperatureK', 3],
  ['ambient temperature', 'ambientTemperatureK', 8],
  ['fuel level', 'fuelLevel', 0.15],
] as const;
/** Between the middles of the two stated ranges, Pa. */
const MOST_VOLATILITY_PA = 8_000;
/** A level sender's own unrest: a rise below this is no filling. */
const LEVEL_UNREST = 0.03;

const alikeWithin = (before: number | undefined, after: number | undefined, most: number): Alike =>
  before === undefined || after === undefined ? 'unknown' : Math.abs(after - before) <= most ? 'yes' : 'no';

const middle = (range: PressureRange | undefined): number | undefined => range && (range.low + range.high) / 2;

/** Fuel of one fill is alike by itself; of two fills only what is stated of them can be compared. */
function volatility(before: ProofConditions, after: ProofConditions): ComparedCondition {
  const stated = { before: before.reidVapourPressurePa, after: after.reidVapourPressurePa };
  const isSameFill =
    before.fuelLevel !== undefined &&
    after.fuelLevel !== undefined &&
    after.fuelLevel - before.fuelLevel <= LEVEL_UNREST;
  return {
    what: 'volatility',
    ...(stated.before === undefined ? {} : { before: stated.before }),
    ...(stated.after === undefined ? {} : { after: stated.after }),
    alike: isSameFill ? 'yes' : alikeWithin(middle(stated.before), middle(stated.after), MOST_VOLATILITY_PA),
    isSameFill,
  };
}

/** Every condition is listed; one that was not written down on either side is `unknown`. */
export function compareConditions(before: ProofConditions, after: ProofConditions): readonly ComparedCondition[] {
  return [
    {
      what: 'method',
      before: before.method,
      after: after.method,
      alike: before.method === after.method ? 'yes' : 'no',
    },
    ...LIMITS.map(([what, key, most]): ComparedCondition => {
      const b = before[key];
      const a = after[key];
      return {
        what,
        ...(b === undefined ? {} : { before: b }),
        ...(a === undefined ? {} : { after: a }),
        alike: alikeWithin(b, a, most),
      };
    }),
    volatility(before, after),
  ];
}
