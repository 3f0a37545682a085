/** What is known of the car's life, and how it shifts the priors. All factors are judgement. */
import type { Figure } from './figure.ts';
import type { RootCauseId } from './root-causes.ts';

export const CIRCUMSTANCES = {
  'salt or rust, over ten years': { F02p: 3, F02h: 3, F11: 3, F05: 1.5 },
  'dusty roads': { F06v: 3, F06f: 3 },
  'tank or pump work in the last 90 days': { F10: 6, F09v: 2, F09p: 2 },
  'cap under six months old': { F01: 0.5 },
  'cap of another pattern': { F01: 2 },
  'topping off admitted': { F08: 4 },
  'body repair at the rear': { F02p: 3, F02h: 3 },
  'capless filler': { F01: 0.8 },
  'low-grade replacement purge valve': { F03: 2 },
  'low-grade replacement vent valve': { F05: 2 },
  'code within two trips of refuelling': { F01: 3 },
  'code only below 5 °C': { F05: 2, F10: 2 },
  'engine-off test failed only in stable cool weather': { F20: 3 },
} as const satisfies Readonly<Record<string, Readonly<Partial<Record<RootCauseId, number>>>>>;
export type CircumstanceId = keyof typeof CIRCUMSTANCES;
export const CIRCUMSTANCE_IDS = Object.keys(CIRCUMSTANCES) as CircumstanceId[];

export const circumstanceKey = (id: CircumstanceId, cause: string): string => `circumstance.${id}.${cause}`;
export const CIRCUMSTANCE_FIGURES: readonly Figure[] = CIRCUMSTANCE_IDS.flatMap((id) =>
  Object.entries(CIRCUMSTANCES[id]).map(
    ([cause, value]): Figure => ({
      key: circumstanceKey(id, cause),
      value,
      mark: 'judgement',
      unit: 'multiple',
      least: 0.01,
      most: 100,
    }),
  ),
);
