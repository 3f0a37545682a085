/** Numbers, dates and shares as the language writes them. */
import { useMemo } from 'react';
import { useSpoken } from './language.ts';
import { NBSP } from './unbroken.ts';

export interface Numbers {
  /** Fixed decimals, true minus sign, no negative zero. */
  fixed(value: number, decimals: number): string;
  /** "71 %", "0.4 %", "under 0.1 %". */
  percent(probability: number): string;
  date(iso: string): string;
  dateTime(iso: string): string;
  bytes(count: number): string;
  /** "64 s", "12 min". */
  duration(seconds: number): string;
  list(words: readonly string[]): string;
}

export function numbersOf(locale: string, under: string, over: string): Numbers {
  // Making a format is dear beside using it, and numbers of the drawing change with every frame.
  const formats = new Map<string, Intl.NumberFormat>();
  const formatOf = (decimals: number, useGrouping: boolean): Intl.NumberFormat => {
    const key = `${decimals} ${useGrouping}`;
    let format = formats.get(key);
    if (format === undefined) {
      format = new Intl.NumberFormat(locale, {
        minimumFractionDigits: decimals,
        maximumFractionDigits: decimals,
        signDisplay: 'negative',
        useGrouping,
      });
      formats.set(key, format);
    }
    return format;
  };
  const fixed = (value: number, decimals: number): string =>
    formatOf(decimals, Math.abs(value) >= 10_000)
      .format(value)
      .replace('-', '\u2212');
  const day = new Intl.DateTimeFormat(locale, { dateStyle: 'medium' });
  const moment = new Intl.DateTimeFormat(locale, { dateStyle: 'medium', timeStyle: 'short' });
  return {
    fixed,
    percent: (probability) => {
      if (probability < 0.001) return `${under} ${fixed(0.1, 1)}${NBSP}%`;
      if (probability > 0.999) return `${over} ${fixed(99.9, 1)}${NBSP}%`;
      const decimals = probability < 0.01 || probability > 0.99 ? 1 : 0;
      return `${fixed(probability * 100, decimals)}${NBSP}%`;
    },
    date: (iso) => day.format(new Date(iso)),
    dateTime: (iso) => moment.format(new Date(iso)),
    bytes: (count) => {
      if (count < 1000) return `${fixed(count, 0)}${NBSP}B`;
      if (count < 1e6) return `${fixed(count / 1e3, 0)}${NBSP}kB`;
      return `${fixed(count / 1e6, 1)}${NBSP}MB`;
    },
    duration: (seconds) =>
      seconds < 180 ? `${fixed(seconds, 0)}${NBSP}s` : `${fixed(seconds / 60, seconds < 600 ? 1 : 0)}${NBSP}min`,
    list: (words) => new Intl.ListFormat(locale, { type: 'conjunction' }).format(words),
  };
}

export function useNumbers(): Numbers {
  const { locale, text } = useSpoken();
  return useMemo(() => numbersOf(locale, text.common.under, text.common.over), [locale, text]);
}
