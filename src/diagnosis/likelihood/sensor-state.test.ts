import { describe, expect, it } from 'vitest';
import type { Phase, ProcedureKind, Recording } from '../../recording/recording.ts';
import { randomStream } from '../../simulation/random.ts';
import type { Car } from '../../system/car.ts';
import { prepare } from '../prepare.ts';
import { FIRST_NOISE } from './noise.ts';
import { constantLogEvidence, sensorState } from './sensor-state.ts';

const CAR: Car = {
  schema: 'vaporwright-car-1',
  label: 'made up',
  layout: 'engine-vacuum',
  pressureSensor: { minGaugePa: -4000, maxGaugePa: 4000 },
};
const PHASES = [{ kind: 'hold' as const, fromS: 0, toS: 60 }];

function prepared(
  pressure: (timeS: number, normal: () => number) => number,
  procedure: ProcedureKind = 'vacuum-draw',
  phases: readonly Phase[] = PHASES,
) {
  const random = randomStream(4);
  const timeS = Float64Array.from({ length: 600 }, (_, i) => 0.1 * i);
  const recording: Recording = {
    label: 'made up',
    timeS,
    channels: { tankPressureGaugePa: timeS.map((t) => pressure(t, () => random.normal())) },
  };
  return prepare(CAR, recording, procedure, phases);
}
const decay = (t: number) => -2000 * Math.exp(-t / 40);

describe('what the readings alone say of the sensor', () => {
  it('tells a sound, a noisy and a dead one apart by their noise', () => {
    const sound = sensorState(prepared((t, n) => decay(t) + 8 * n()));
    const noisy = sensorState(prepared((t, n) => decay(t) + 130 * n()));
    const dead = sensorState(prepared(() => 37));
    expect(sound.sound - Math.max(sound.noisy, sound.frozen)).toBeGreaterThan(1);
    expect(noisy.noisy - Math.max(noisy.sound, noisy.frozen)).toBeGreaterThan(1);
    expect(dead.frozen).toBeGreaterThan(dead.sound);
  });

  it('says nothing where the readings sit at the rail and have no noise to judge', () => {
    // 12.5 % of the span beyond the nominal range
    expect(sensorState(prepared(() => -5000))).toEqual({ sound: 0, noisy: 0, frozen: 0 });
  });

  it('a sensor that froze half-way is explained whatever it read before, and a pressure that only moves less is not', () => {
    const frozenAt20 = (t: number, n: () => number) =>
      Math.round(decay(Math.min(t, 20)) + (t < 20 ? 3 * n() : 0.1 * n()));
    const still = constantLogEvidence(prepared(frozenAt20), FIRST_NOISE);
    const moving = constantLogEvidence(
      prepared((t, n) => Math.round(decay(t) + 3 * n())),
      FIRST_NOISE,
    );
    expect(still - moving).toBeGreaterThan(100);
  });

  it('readings that fall to the rail and stay there speak far less of a frozen sensor than ones that stop half-way', () => {
    const phases = [{ kind: 'purge' as const, fromS: 0, toS: 60 }];
    const fallsTo = (level: number) =>
      constantLogEvidence(
        prepared((t) => Math.max(level, -500 * t), 'purge-drive', phases),
        FIRST_NOISE,
      );
    // 12.5 % of the span beyond the nominal range
    expect(fallsTo(-4500) - fallsTo(-5000)).toBeGreaterThan(50);
  });

  it('a constant explains readings that stand still far better than readings that move', () => {
    const still = constantLogEvidence(
      prepared((_, n) => 37 + 3 * n()),
      FIRST_NOISE,
    );
    const moving = constantLogEvidence(
      prepared((t, n) => decay(t) + 3 * n()),
      FIRST_NOISE,
    );
    expect(still - moving).toBeGreaterThan(100);
    // and does not care which constant it is
    const elsewhere = constantLogEvidence(
      prepared((_, n) => -812 + 3 * n()),
      FIRST_NOISE,
    );
    expect(Math.abs(still - elsewhere)).toBeLessThan(1e-6 * Math.abs(still));
  });
});
