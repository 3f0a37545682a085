/** Times on the recording's clock, as they are read beside a car. */
import { useMemo } from 'react';
import { useNumbers } from '../text/numbers.ts';
import { NBSP } from '../text/unbroken.ts';

/** "8.4 s" below a minute, "2:05 min" above. */
export function useTimeWords(): (timeS: number) => string {
  const { fixed } = useNumbers();
  return useMemo(
    () => (timeS) => {
      if (timeS < 60) return `${fixed(timeS, 1)}${NBSP}s`;
      const whole = Math.round(timeS);
      return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}${NBSP}min`;
    },
    [fixed],
  );
}
