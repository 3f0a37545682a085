import { describe, expect, it } from 'vitest';
import type { CauseId } from '../finding.ts';
import type { Prepared } from '../prepare.ts';
import { fillingLogDensity } from './shut-offs.ts';

const filling = (earlyShutOffs: number, endLevel?: number): Prepared =>
  ({ filling: { earlyShutOffs, ...(endLevel !== undefined && { endLevel }) } }) as unknown as Prepared;
/** ln of how much likelier one cause makes the shut-offs than another. */
const odds = (p: Prepared, a: CauseId, b: CauseId) => fillingLogDensity(p, a) - fillingLogDensity(p, b);

describe('what the shut-offs say', () => {
  it('nothing where nothing was filled', () => {
    expect(fillingLogDensity({} as unknown as Prepared, 'none')).toBe(0);
  });

  it('clicks before full speak for a blockage (common practice, no source), the more for coming again', () => {
    expect(odds(filling(1), 'vent_stuck_closed', 'none')).toBeGreaterThan(1);
    expect(odds(filling(3), 'vent_restricted', 'none')).toBeGreaterThan(odds(filling(1), 'vent_restricted', 'none'));
    expect(odds(filling(0), 'vent_stuck_closed', 'none')).toBeLessThan(-1);
  });

  it('a tank that took fuel to the brim speaks for a fill-limit valve stuck open', () => {
    expect(odds(filling(0, 1.02), 'fill_valve_stuck_open', 'none')).toBeGreaterThan(0.5);
    expect(odds(filling(0, 0.93), 'fill_valve_stuck_open', 'none')).toBeLessThan(-0.5);
  });
});
