/** Whether before and after were measured alike. Limits: 3 K as for the repeated flow test; others judgement. */

export interface ProofConditions {
  readonly fuelTemperatureK?: number;
  readonly ambientTemperatureK?: number;
  /** 0..1 */
  readonly fuelLevel?: number;
  readonly reidVapourPressurePa?: number;
  /** What was measured: a procedure of a recording, or a check's number. */
  readonly method: string;
}

export interface ComparedCondition {
  readonly what: 'method' | 'fuel temperature' | 'ambient temperature' | 'fuel level' | 'volatility';
  readonly before?: number | string;
  readonly after?: number | string;
  readonly alike: 'yes' | 'no' | 'unknown';
}

const LIMITS = [
  ['fuel temperature', 'fuelTemperatureK', 3],
  ['ambient temperature', 'ambientTemperatureK', 8],
  ['fuel level', 'fuelLevel', 0.15],
  ['volatility', 'reidVapourPressurePa', 8_000],
] as const;

export function compareConditions(before: ProofConditions, after: ProofConditions): readonly ComparedCondition[] {
  const method: ComparedCondition = {
    what: 'method',
    before: before.method,
    after: after.method,
    alike: before.method === after.method ? 'yes' : 'no',
  };
  return [
    method,
    ...LIMITS.map(([what, key, most]): ComparedCondition => {
      const b = before[key];
      const a = after[key];
      return {
        what,
        ...(b === undefined ? {} : { before: b }),
        ...(a === undefined ? {} : { after: a }),
        alike: b === undefined || a === undefined ? 'unknown' : Math.abs(a - b) <= most ? 'yes' : 'no',
      };
    }),
  ];
}
