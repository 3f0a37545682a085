import { describe, expect, it } from 'vitest';
import type { Car } from '../system/car.ts';
import { engineOffOutlook, playEngineOff } from './engine-off-result.ts';
import type { EngineOffSituation } from './situation-after.ts';

const CAR: Car = { schema: 'vaporwright-car-1', label: 'made', layout: 'engine-off', demo: true };
const WARM: EngineOffSituation = {
  fuelLevel: 0.4,
  ambientAbsPa: 101_325,
  ambientFromK: 293,
  ambientToK: 285,
  fuelTemperatureK: 305,
  heatW: 250,
};

describe('whether an engine-off test can tell', () => {
  it('a tight warm tank gives an answer, a car that stood all day does not', () => {
    const warm = engineOffOutlook(CAR, WARM);
    const cold = engineOffOutlook(CAR, { ...WARM, fuelTemperatureK: 293, ambientToK: 292.5, heatW: 0 });
    expect(cold.conclusive).toBe(false);
    expect(cold.because).toBe('too-little');
    expect(Math.abs(warm.peaks[0]!.lowestGaugePa)).toBeGreaterThan(Math.abs(cold.peaks[0]!.lowestGaugePa));
  });

  it('larger holes leave less, and a steady swing a plateau that goes with one over the fourth power of the diameter', () => {
    const { peaks } = engineOffOutlook(CAR, WARM);
    for (let k = 1; k < peaks.length; k++)
      expect(peaks[k]!.highestGaugePa - peaks[k]!.lowestGaugePa).toBeLessThan(
        peaks[k - 1]!.highestGaugePa - peaks[k - 1]!.lowestGaugePa,
      );
    // Trade practice 6.7: the plateau of a slow swing goes with 1/d^4 (computed there from the square-root law).
    const steady: EngineOffSituation = { ...WARM, fuelTemperatureK: 293, ambientToK: 270, heatW: 0 };
    const small = playEngineOff(CAR, steady, 0.5e-3).lowestGaugePa;
    const large = playEngineOff(CAR, steady, 0.6e-3).lowestGaugePa;
    expect(small / large / 1.2 ** 4).toBeGreaterThan(0.9);
    expect(small / large / 1.2 ** 4).toBeLessThan(1.1);
  });
});
