/** Quantities that the likelihoods derive from what was read, by name, each with its kind. */
export const DERIVED_KINDS = {
  'sum by area': 'length',
  'purge coil at 20 °C': 'resistance',
  'vent coil at 20 °C': 'resistance',
  offset: 'pressure',
  gain: 'number',
  loading: 'fraction',
  'drop at 10 L/min': 'pressure',
  'lost in 30 s': 'fraction',
  'tank over reference': 'number',
  'after over before': 'number',
} as const satisfies Readonly<Record<string, 'length' | 'resistance' | 'pressure' | 'fraction' | 'number'>>;

export type Derived = keyof typeof DERIVED_KINDS;
export const DERIVED_IDS = Object.keys(DERIVED_KINDS) as Derived[];
