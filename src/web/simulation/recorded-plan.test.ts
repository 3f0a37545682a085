/** A recording that the simulator made must come back from the drawing, played by what the recording alone tells. */
import { describe, expect, it } from 'vitest';
import { findPhases } from '../../recording/phases.ts';
import { engineOff } from '../../simulation/procedures/engine-off.ts';
import { pumpRun } from '../../simulation/procedures/pump-run.ts';
import { sealedHold } from '../../simulation/procedures/sealed-hold.ts';
import { vacuumDraw } from '../../simulation/procedures/vacuum-draw.ts';
import type { Conditions } from '../../simulation/scenario.ts';
import { type Simulation, simulate } from '../../simulation/simulate.ts';
import { assembleCar } from '../../system/assemble.ts';
import type { Car } from '../../system/car.ts';
import type { Fault } from '../../system/faults/fault.ts';
import { play } from './play.ts';
import type { PlayedRun } from './played-run.ts';
import { type RecordedEvent, recordedDay, recordedPlan } from './recorded-plan.ts';

const CAR: Car = { schema: 'vaporwright-car-1', label: 'invented', layout: 'engine-vacuum', tankVolumeM3: 0.048 };
const FULL = 0.34;
/** A cold day high up, so that a mild one at sea level would be seen. */
const COLD: Conditions = {
  ambientAbsPa: 84_000,
  ambientTemperatureK: 275,
  manifoldAbsPa: 41_000,
  start: { fuelTemperatureK: 281 },
};
const LEAK: Fault = { kind: 'leak', place: 'senderSeal', size: 0.7e-3 };

function record(
  car: Car,
  procedure: ReturnType<typeof vacuumDraw>,
  faults: readonly Fault[],
  conditions = COLD,
): Simulation {
  const network = assembleCar(car, faults, (p) => {
    p.tank.fillFraction = FULL;
  });
  const sampling = { rateHz: 5, jitter: 0.05, pressureStepPa: 12, noisePa: 8, seed: 7 };
  return simulate({ label: 'made.csv', network, procedure, conditions, sampling });
}

function eventOf(
  { recording }: Simulation,
  procedure: RecordedEvent['procedure'],
  without: readonly string[] = [],
): RecordedEvent {
  const channels = Object.fromEntries(Object.entries(recording.channels).filter(([name]) => !without.includes(name)));
  const phases = findPhases({ ...recording, channels: recording.channels });
  return {
    id: `${procedure} ${without.join()}`,
    label: 'made.csv',
    timeS: recording.timeS,
    channels,
    procedure,
    phases,
  };
}

function again(car: Car, event: RecordedEvent, faults: readonly Fault[], had = faults): PlayedRun {
  const recorded = recordedPlan(car, had, event, recordedDay(car, event))!;
  const system = { layout: car.layout, closure: 'capped', hasRecovery: true, car } as const;
  return play({ system, faults, procedure: 'vacuum-draw', recorded, isCoarse: false }, () => 0);
}

/** Largest difference between the played and the recorded pressure, Pa, the moments of a switch left out. */
function apart(
  run: PlayedRun,
  event: RecordedEvent,
  sensor: string,
  channel: 'tankPressureGaugePa' | 'pumpPressureGaugePa',
  only?: string,
): number {
  const values = event.channels[channel]!;
  const edges = event.phases.flatMap(({ fromS, toS }) => [fromS, toS]);
  let most = 0;
  for (let i = 0; i < values.length; i++) {
    const t = event.timeS[i]! - event.phases[0]!.fromS;
    if (edges.some((edge) => Math.abs(edge - event.timeS[i]!) < 3)) continue;
    if (only !== undefined && event.phases.find(({ toS }) => toS > event.timeS[i]!)?.kind !== only) continue;
    const k = run.timeS.findIndex((at) => at >= t);
    if (k > 0) most = Math.max(most, Math.abs(run.readings[sensor]![k]! - values[i]!));
  }
  return most;
}

describe('a recording played again', () => {
  const made = record(CAR, vacuumDraw({ baselineS: 12, holdS: 90, drawDuty: 0.12, targetGaugePa: -1800 }), [LEAK]);
  const event = eventOf(made, 'vacuum-draw');

  it('takes level, air and fuel from its channels', () => {
    const day = recordedDay(CAR, event);
    expect(day.fuelLevel).toBeCloseTo(FULL, 2);
    expect(day.ambientAbsPa).toBeCloseTo(84_000, -2);
    expect(day.ambientTemperatureK).toBeCloseTo(275, 0);
    expect(day.fuelTemperatureK).toBeCloseTo(281, 0);
    const { fuelLevel: _, ...silent } = event.channels;
    expect(recordedDay(CAR, { ...event, channels: silent }).levelKnown).toBe(false);
  });

  it('stands where it was recorded, phase by phase, with the pressure that was recorded', () => {
    const run = again(CAR, event, [LEAK]);
    expect(run.failure).toBeUndefined();
    const ends = event.phases.map(({ toS }) => toS - event.phases[0]!.fromS);
    for (const end of ends)
      expect(
        run.steps.some(({ toS }) => Math.abs(toS - end) < 1e-6),
        `${end} s`,
      ).toBe(true);
    expect(apart(run, event, 'tankPressure', 'tankPressureGaugePa')).toBeLessThan(90);
  });

  it('shows another car where the fault is another', () => {
    expect(apart(again(CAR, event, [], [LEAK]), event, 'tankPressure', 'tankPressureGaugePa')).toBeGreaterThan(300);
  });

  it('a sound car reaches its vacuum and holds it, however long the draw of the faulty one took', () => {
    const run = again(CAR, event, [], [LEAK]);
    const lowest = Math.min(...run.readings.tankPressure!);
    expect(lowest).toBeGreaterThan(-1900);
    expect(lowest).toBeLessThan(-1700);
  });

  it('draws as strongly as was recorded, where neither the duty nor any valve was recorded', () => {
    const bare = eventOf(made, 'vacuum-draw', ['purgeDuty', 'ventClosed']);
    const run = again(CAR, bare, [LEAK]);
    expect(apart(run, bare, 'tankPressure', 'tankPressureGaugePa', 'hold')).toBeLessThan(120);
    expect(run.isDrawMatched).toBe(true);
    const draw = run.steps.find(({ phase }) => phase === 'draw')!;
    const recorded = bare.phases.find(({ kind }) => kind === 'draw')!;
    expect((draw.toS - draw.fromS) / (recorded.toS - recorded.fromS)).toBeGreaterThan(0.95);
  });

  it('says so where nothing makes the draw what was recorded', () => {
    const other = { ...event, id: 'gross' };
    const gross: Fault = { kind: 'leak', place: 'senderSeal', size: 12e-3 };
    expect(again(CAR, other, [gross]).isDrawMatched).toBe(false);
  });

  it('plays a pump run and a sealed hold by their own commands', () => {
    const pumpCar: Car = { ...CAR, layout: 'pump-reference' };
    const pump = eventOf(record(pumpCar, pumpRun(), [LEAK]), 'pump-run');
    expect(apart(again(pumpCar, pump, [LEAK]), pump, 'pumpPressure', 'pumpPressureGaugePa')).toBeLessThan(90);
    const sealedCar: Car = { ...CAR, layout: 'sealed-tank' };
    const start = { fuelTemperatureK: 281, tankGaugePa: 9_000 };
    const sealed = eventOf(record(sealedCar, sealedHold(), [], { ...COLD, start }), 'sealed-hold');
    expect(apart(again(sealedCar, sealed, []), sealed, 'tankPressure', 'tankPressureGaugePa')).toBeLessThan(300);
  });

  it('plays an engine-off test from key-off on', () => {
    const car: Car = { ...CAR, layout: 'engine-off' };
    const off = eventOf(record(car, engineOff({ sealedS: 300, sealedAgainS: 300 }), [LEAK]), 'engine-off');
    const run = again(car, off, [LEAK]);
    expect(run.steps.map(({ phase }) => phase)).toEqual(off.phases.map(({ kind }) => kind));
  });
});
