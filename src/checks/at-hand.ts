/** What the shop has and how the car stands now: which checks cannot be done for it. */
import type { Check } from './check.ts';

/** Bands of the fuel level that make a difference to a check, as fractions. */
export const FUEL_LEVELS = {
  low: { least: 0, most: 0.15 },
  middle: { least: 0.15, most: 0.7 },
  high: { least: 0.7, most: 0.85 },
  full: { least: 0.85, most: 1 },
} as const;
export type FuelLevel = keyof typeof FUEL_LEVELS;
export const FUEL_LEVEL_IDS = Object.keys(FUEL_LEVELS) as FuelLevel[];

export interface AtHand {
  /** Equipment, by the catalogue's names, that the shop has not. */
  readonly missing: readonly string[];
  /** No lift can be had for this car today. */
  readonly hasNoLift: boolean;
  /** Where it is not known nothing is left out for it. */
  readonly fuelLevel: FuelLevel | 'unknown';
}

/** Why a check cannot be done now, or nothing. */
export function cannotNow(
  { equipment, setups, level }: Check,
  { missing, hasNoLift, fuelLevel }: AtHand,
): 'equipment' | 'lift' | 'level' | undefined {
  if (equipment.some((name) => missing.includes(name))) return 'equipment';
  if (hasNoLift && setups.includes('lift')) return 'lift';
  if (level === undefined || fuelLevel === 'unknown') return undefined;
  const band = FUEL_LEVELS[fuelLevel];
  return band.least >= level.most || band.most <= level.least ? 'level' : undefined;
}
