import { describe, expect, it } from 'vitest';
import { simulateCase } from './simulate-case.ts';

describe('a drawn recording', () => {
  it('repeats itself, and differs from its neighbour', () => {
    const p = (index: number) => simulateCase(3, index).prepared.recording.channels.tankPressureGaugePa!;
    expect(p(0)).toEqual(p(0));
    expect(p(0)).not.toEqual(p(1));
  });

  it('ends the draw where the module reads the target, or at its time-out', () => {
    let reached = 0;
    for (let index = 0; index < 25; index++) {
      const { prepared, day, targetReached } = simulateCase(5, index);
      const { timeS, channels } = prepared.recording;
      const drawing = channels.purgeDuty!.map((d, i) => (d > 0 ? channels.tankPressureGaugePa![i]! : 0));
      const length = timeS[channels.purgeDuty!.findLastIndex((d) => d > 0)]! - day.baselineS;
      expect(length).toBeLessThanOrEqual(day.timeOutS + 1);
      if (targetReached) {
        reached++;
        expect(Math.min(...drawing)).toBeLessThan(0.9 * day.targetGaugePa);
      } else expect(length).toBeGreaterThan(day.timeOutS - 2);
    }
    expect(reached).toBeGreaterThan(15);
  });
});
