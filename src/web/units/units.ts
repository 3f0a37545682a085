/** The units that a person reads and writes in; inside, everything stays SI. Conversion is `src/units` alone. */
import { createContext, use } from 'react';
import { fromSi, toSi } from '../../units/convert.ts';
import { unitBySymbol } from '../../units/parse-unit.ts';
import type { Unit } from '../../units/unit-table.ts';

export const PRESSURE_UNITS = ['kPa', 'inH2O', 'mmHg', 'psi'] as const;
export const LENGTH_UNITS = ['mm', 'in'] as const;
export const TEMPERATURE_UNITS = ['°C', '°F'] as const;
export const VOLUME_UNITS = ['L', 'gal'] as const;

export interface UnitChoice {
  readonly pressure: (typeof PRESSURE_UNITS)[number];
  readonly length: (typeof LENGTH_UNITS)[number];
  readonly temperature: (typeof TEMPERATURE_UNITS)[number];
  readonly volume: (typeof VOLUME_UNITS)[number];
}
export type ChosenQuantity = keyof UnitChoice;

export const METRIC: UnitChoice = { pressure: 'kPa', length: 'mm', temperature: '°C', volume: 'L' };

/** Subscripts are for reading; files and requests keep the plain spelling. */
const SHOWN: Readonly<Record<string, string>> = { inH2O: 'inH₂O' };
export const shownSymbol = (symbol: string): string => SHOWN[symbol] ?? symbol;

/** Decimals in which a quantity is read beside a car; finer ones would claim what no gauge shows. */
const DECIMALS: Readonly<Record<string, number>> = {
  kPa: 2,
  inH2O: 1,
  mmHg: 1,
  psi: 3,
  mm: 2,
  in: 3,
  '°C': 0,
  '°F': 0,
  L: 1,
  gal: 1,
};

export interface Units {
  readonly choice: UnitChoice;
  choose(change: Partial<UnitChoice>): void;
  unit(quantity: ChosenQuantity): Unit;
  /** Symbol as shown, "inH₂O". */
  symbol(quantity: ChosenQuantity): string;
  decimals(quantity: ChosenQuantity): number;
  /** Number in the unit chosen. */
  from(quantity: ChosenQuantity, valueSi: number): number;
  /** SI value of a number in the unit chosen. */
  to(quantity: ChosenQuantity, value: number): number;
  /** "0.62 mm" in the language's form; pressure in Pa, length in m, temperature in K, volume in m3. */
  print(quantity: ChosenQuantity, valueSi: number, decimals?: number): string;
  /** "0.62 mm (0.56 to 0.69)", always the 90 % interval. */
  printInterval(quantity: ChosenQuantity, middleSi: number, lowSi: number, highSi: number, decimals?: number): string;
}

export function unitsOf(
  choice: UnitChoice,
  choose: (change: Partial<UnitChoice>) => void,
  fixed: (value: number, decimals: number) => string,
  to: string,
): Units {
  const unit = (quantity: ChosenQuantity): Unit => unitBySymbol(choice[quantity]);
  const decimalsOf = (quantity: ChosenQuantity): number => DECIMALS[choice[quantity]] ?? unit(quantity).decimals;
  const from = (quantity: ChosenQuantity, valueSi: number): number => fromSi(valueSi, unit(quantity));
  const number = (quantity: ChosenQuantity, valueSi: number, decimals?: number): string =>
    fixed(from(quantity, valueSi), decimals ?? decimalsOf(quantity));
  const symbol = (quantity: ChosenQuantity): string => shownSymbol(choice[quantity]);
  const print = (quantity: ChosenQuantity, valueSi: number, decimals?: number): string =>
    `${number(quantity, valueSi, decimals)}\u00a0${symbol(quantity)}`;
  return {
    choice,
    choose,
    unit,
    symbol,
    decimals: decimalsOf,
    from,
    to: (quantity, value) => toSi(value, unit(quantity)),
    print,
    printInterval: (quantity, middle, low, high, decimals) =>
      `${print(quantity, middle, decimals)} (${number(quantity, low, decimals)}\u00a0${to}\u00a0${number(quantity, high, decimals)})`,
  };
}

export const UnitsContext = createContext<Units | null>(null);

/** The same units on every part of every page. */
export function useUnits(): Units {
  const units = use(UnitsContext);
  if (units === null) throw new Error('useUnits() is called outside <UnitsProvider>.');
  return units;
}
