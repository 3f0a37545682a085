import { describe, expect, it } from 'vitest';
import { makeCar } from '../../capture/simulated-car/make-car.ts';
import type { Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';
import { Follower } from './follower.ts';

const CAR: Car = { schema: 'vaporwright-car-1', label: 'made up', layout: 'engine-vacuum', tankVolumeM3: 0.06 };
const HOLE_MM = 1;
/** What a car's bus gives: all but the vent's command. */
const told = ((): Recording => {
  const faults = [{ kind: 'leak', place: 'cap', size: HOLE_MM * 1e-3 }] as const;
  const { recording } = makeCar({ layout: 'engine-vacuum', faults });
  const { ventClosed: _, ...channels } = recording.channels;
  return { ...recording, channels };
})();
/** Second after second up to a time. */
function* secondsOf({ timeS, channels, label }: Recording, untilS: number): Generator<Recording> {
  for (let s = 0; s < untilS; s++) {
    const at = [...timeS.keys()].filter((i) => timeS[i]! >= s && timeS[i]! < s + 1);
    const part = (values: Float64Array): Float64Array => Float64Array.from(at, (i) => values[i]!);
    yield {
      label,
      timeS: part(timeS),
      channels: Object.fromEntries(Object.entries(channels).map(([name, values]) => [name, part(values)])),
    };
  }
}

describe('a recording that is followed while it grows', () => {
  it('finds draw and hold without the vent’s command, and the hole within its interval', () => {
    const follower = new Follower({ car: CAR, known: {}, procedure: 'vacuum-draw' });
    let last = follower.follow();
    for (const rows of secondsOf(told, 45)) {
      follower.add(rows);
      last = follower.follow();
    }
    expect(last.phases.map(({ kind }) => kind)).toEqual(['baseline', 'draw', 'settle', 'hold']);
    expect(last.ventShut).toEqual([{ fromS: expect.closeTo(10, 0) }]);
    const { causes, diameterMm, holdingLonger } = last.finding!;
    expect(causes[0]!.id).toBe('leak');
    expect(diameterMm!.lo90).toBeLessThan(HOLE_MM);
    expect(diameterMm!.hi90).toBeGreaterThan(HOLE_MM);
    expect(holdingLonger!.reason).toMatch(/./);
  });

  it('is not misled by rows of slow items between the others', () => {
    const follower = new Follower({ car: null, known: {}, procedure: 'vacuum-draw' });
    for (const { timeS, channels, label } of secondsOf(told, 20)) {
      // Before every row one with the fuel level alone, as an answer of its own.
      const twice = (values: Float64Array, name: string): Float64Array =>
        Float64Array.from({ length: 2 * values.length }, (_, i) =>
          (i % 2 === 0) === (name === 'fuelLevel') ? values[i >> 1]! : Number.NaN,
        );
      follower.add({
        label,
        timeS: Float64Array.from({ length: 2 * timeS.length }, (_, i) => timeS[i >> 1]! - (i % 2 === 0 ? 0.04 : 0)),
        channels: Object.fromEntries(Object.entries(channels).map(([name, values]) => [name, twice(values, name)])),
      });
    }
    expect(follower.follow().phases.map(({ kind }) => kind)).toEqual(['baseline', 'draw', 'settle', 'hold']);
  });

  it('says nothing of causes until it is told what is done, and then takes all rows', () => {
    const follower = new Follower({ car: CAR, known: {}, procedure: null });
    for (const rows of secondsOf(told, 30)) follower.add(rows);
    expect(follower.follow()).toMatchObject({ finding: null, ventShut: [] });
    follower.say('vacuum-draw', []);
    const { finding, phases } = follower.follow();
    expect(phases.map(({ kind }) => kind)).toContain('hold');
    expect(finding!.samples).toBeGreaterThan(200);
    expect(finding!.causes.length).toBeGreaterThan(1);
  });

  it('takes marks by hand before what the draw shows', () => {
    const follower = new Follower({ car: null, known: {}, procedure: 'vacuum-draw' });
    for (const rows of secondsOf(told, 30)) follower.add(rows);
    follower.say('vacuum-draw', [{ fromS: 5, toS: 20 }]);
    const { ventShut, phases, finding } = follower.follow();
    expect(ventShut).toEqual([{ fromS: 5, toS: 20 }]);
    expect(phases.find(({ kind }) => kind === 'sealed')!.fromS).toBeCloseTo(5, 0);
    expect(finding).toBeNull();
  });
});
