import { useMemo } from 'react';
import type { FaultKind } from '../../../system/faults/fault.ts';
import { useNumbers } from '../../text/numbers.ts';
import { NBSP } from '../../text/unbroken.ts';
import { useUnits } from '../../units/units.ts';
import { AIR_KG_PER_M3 } from '../state/summary.ts';

/** Numbers of the drawing as the page writes them. */
export interface Formats {
  readonly pressure: (pa: number) => string;
  readonly pressureNumber: (pa: number) => string;
  readonly flow: (kgPerS: number) => string;
  readonly percent: (share: number) => string;
  readonly mass: (kg: number) => string;
  readonly markMass: (kg: number) => string;
  readonly volume: (m3: number) => string;
  readonly time: (timeS: number, durationS: number) => string;
  readonly size: (kind: FaultKind, value: number) => string;
}

/** Litres of air a minute, as flow meters of the trade read. */
const L_PER_MIN_PER_KG_PER_S = 60_000 / AIR_KG_PER_M3;

const MOST_REMEMBERED = 4000;

/** Numbers of a drawing come again and again, and writing one in a language's form is dear beside painting a frame. */
function remembered(write: (value: number, decimals: number) => string): (value: number, decimals: number) => string {
  const known = new Map<string, string>();
  return (value, decimals) => {
    const key = `${decimals} ${value.toFixed(decimals)}`;
    let text = known.get(key);
    if (text === undefined) {
      if (known.size > MOST_REMEMBERED) known.clear();
      text = write(value, decimals);
      known.set(key, text);
    }
    return text;
  };
}

export function useFormats(): Formats {
  const units = useUnits();
  const { fixed: write } = useNumbers();
  return useMemo<Formats>(() => {
    const fixed = remembered(write);
    const percent = (share: number): string => `${fixed(share * 100, 0)}${NBSP}%`;
    const symbol = units.symbol('pressure');
    const decimals = units.decimals('pressure');
    const pressure = (pa: number): string => `${fixed(units.from('pressure', pa), decimals)}${NBSP}${symbol}`;
    const withUnit = (value: number, decimals: number, unit: string): string =>
      `${fixed(value, decimals)}${NBSP}${unit}`;
    return {
      pressure,
      pressureNumber: (pa) => fixed(units.from('pressure', pa), units.decimals('pressure')),
      percent,
      flow: (kgPerS) => {
        const value = Math.abs(kgPerS) * L_PER_MIN_PER_KG_PER_S;
        return withUnit(value, value < 0.1 ? 3 : value < 1 ? 2 : value < 10 ? 1 : 0, 'L/min');
      },
      mass: (kg) => withUnit(kg * 1000, 0, 'g'),
      markMass: (kg) => (kg < 1e-3 ? withUnit(kg * 1e6, 0, 'mg') : withUnit(kg * 1e3, 0, 'g')),
      volume: (m3) => units.print('volume', m3),
      time: (timeS, durationS) => {
        if (durationS < 180) return withUnit(timeS, 1, 's');
        const s = Math.round(timeS);
        if (durationS < 7200)
          return `${fixed(Math.floor(s / 60), 0)}${NBSP}min${NBSP}${String(s % 60).padStart(2, '0')}${NBSP}s`;
        return `${fixed(Math.floor(s / 3600), 0)}${NBSP}h${NBSP}${String(Math.floor((s % 3600) / 60)).padStart(2, '0')}${NBSP}min`;
      },
      size: (kind, value) => {
        switch (kind.size?.unit) {
          case 'm':
            return units.print('length', value);
          case 'Pa':
            return pressure(value);
          case 's':
            return withUnit(value, value < 10 ? 1 : 0, 's');
          case 'K':
            return withUnit(value, 0, 'K');
          default:
            return kind.kind === 'sensor-gain' ? fixed(value, 2) : percent(value);
        }
      },
    };
  }, [units, write]);
}
