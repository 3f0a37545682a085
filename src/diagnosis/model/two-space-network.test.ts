/** The reduced model against the full network on a vacuum draw with a leak. */
import { describe, expect, it } from 'vitest';
import { simulate } from '../../simulation/simulate.ts';
import { typicalScenario } from '../../simulation/typical-scenarios.ts';
import type { Car } from '../../system/car.ts';
import { CATALOGUE } from '../causes/catalogue.ts';
import { prepare } from '../prepare.ts';
import { SizeMixture } from '../size.ts';
import { sizeContexts } from '../size-contexts.ts';
import { fitOneCause } from '../weighing/fit-one-cause.ts';

const LEAK = CATALOGUE.find((c) => c.id === 'leak' && c.size === 'leak')!;

describe('the two-space model follows the full network', () => {
  for (const mm of [0.5, 1]) {
    it(`through draw and hold with a leak of ${mm} mm at the filler neck`, () => {
      let car: Car = { schema: 'vaporwright-car-1', label: 'typical', layout: 'engine-vacuum' };
      const scenario = typicalScenario('engine-vacuum', [{ kind: 'leak', place: 'neck', size: mm * 1e-3 }], (p) => {
        car = { ...car, tankVolumeM3: p.tank.shellVolumeM3, fillerNeckVolumeM3: p.tank.neckVolumeM3 };
      });
      const { recording, phases } = simulate(scenario);
      const prepared = prepare(car, recording, 'vacuum-draw', phases);
      const { weighing, posterior } = fitOneCause(car, [prepared], LEAK);
      const { problem, fit } = weighing.weighed[0]!;
      const o = prepared.observations;
      const modelled = new Float64Array(o.timeS.length);
      problem.model(fit.z, 0, modelled);
      const apart = (phase: string) =>
        Math.sqrt(
          o.gaugePa.reduce((s, x, i) => s + (o.phase[i] === phase ? (x - modelled[i]!) ** 2 : 0), 0) /
            o.phase.filter((p) => p === phase).length,
        );
      const deepest = -o.gaugePa.reduce((a, b) => Math.min(a, b), 0);
      expect(deepest).toBeGreaterThan(1500);
      // the hold within 0.5 % of the vacuum reached, the draw within 5 %
      expect(apart('hold')).toBeLessThan(0.005 * deepest);
      expect(apart('draw')).toBeLessThan(0.05 * deepest);
      // with parameters that stay near what is known of the car
      expect(Math.max(...fit.z.map(Math.abs))).toBeLessThan(3.5);
      // and a hole of the right size
      const size = new SizeMixture(sizeContexts(weighing, posterior, ['vacuum-draw']));
      expect(Math.abs(Math.log(size.quantile(0.5) / mm))).toBeLessThan(0.15);
    });
  }
});
