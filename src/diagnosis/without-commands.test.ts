/** A self-test of the simulator, told with channels missing: the finding must not change with what a logger left out. */
import { describe, expect, it } from 'vitest';
import { findProcedure } from '../recording/procedure.ts';
import { CHANNELS, type ChannelName, type Recording } from '../recording/recording.ts';
import { simulate } from '../simulation/simulate.ts';
import { typicalScenario } from '../simulation/typical-scenarios.ts';
import type { Car } from '../system/car.ts';
import { diagnose } from './diagnose.ts';

const HOLE_MM = 0.8;
const CAR: Car = { schema: 'vaporwright-car-1', label: 'made', layout: 'engine-vacuum' };
const whole = simulate({
  ...typicalScenario('engine-vacuum', [{ kind: 'leak', place: 'neck', size: HOLE_MM * 1e-3 }]),
  sampling: { rateHz: 5, jitter: 0.1, pressureStepPa: 6, noisePa: 6, seed: 3 },
}).recording;
const ALL = Object.keys(CHANNELS) as ChannelName[];

function without(...missing: readonly ChannelName[]): Recording {
  const channels = { ...whole.channels };
  for (const name of missing) delete channels[name];
  return { ...whole, channels };
}

describe('a self-test with channels missing', () => {
  const cases: readonly (readonly [string, readonly ChannelName[], RegExp])[] = [
    ['manifold pressure', ['manifoldAbsPa'], /manifold pressure is not known/],
    ['purge command', ['purgeDuty'], /purge valve's command is not recorded/],
    ['vent command', ['ventClosed'], /vent valve's command is not recorded/],
    ['both commands', ['ventClosed', 'purgeDuty'], /vent valve's command is not recorded/],
    [
      'everything but the pressure',
      ALL.filter((name) => name !== 'tankPressureGaugePa'),
      /purge valve's command is not recorded/,
    ],
  ];
  it.each(cases)('%s: the hole is found all the same, and the gap is said', (_, missing, said) => {
    const recording = without(...missing);
    expect(findProcedure(recording).kind).toBe('vacuum-draw');
    const finding = diagnose({ car: CAR, recordings: [recording] });
    const holes = finding.causes.filter(({ id }) => id === 'leak' || id === 'vent_leak');
    expect(holes.reduce((sum, { probability }) => sum + probability, 0)).toBeGreaterThan(0.8);
    expect(finding.diameterMm!.lo90).toBeLessThan(HOLE_MM);
    expect(finding.diameterMm!.hi90).toBeGreaterThan(HOLE_MM);
    expect(finding.warnings.some((warning) => said.test(warning))).toBe(true);
  });

  it('an engine-off test without the vent command takes no part', () => {
    const recording: Recording = {
      ...without('ventClosed'),
      notes: { procedure: 'engine-off' },
    };
    const finding = diagnose({ car: CAR, recordings: [recording] });
    expect(finding.verdict).toBe('cannot-tell');
    expect(finding.warnings.join()).toContain('no channel tells when the vent valve was shut');
  });

  it('a purge drive without the purge command takes no part', () => {
    const finding = diagnose({
      car: CAR,
      recordings: [{ ...without('purgeDuty', 'ventClosed'), notes: { procedure: 'purge-drive' } }],
    });
    expect(finding.verdict).toBe('cannot-tell');
    expect(finding.warnings.join()).toContain('no channel tells when the purge valve worked');
  });
});

describe('readings beyond any vapour system', () => {
  const scaled = (by: (value: number, i: number) => number): Recording => ({
    ...whole,
    channels: { ...whole.channels, tankPressureGaugePa: whole.channels.tankPressureGaugePa!.map(by) },
  });

  it('a wrong unit is no fault of the sensor', () => {
    const finding = diagnose({ car: CAR, recordings: [scaled((value) => 1000 * value)] });
    expect(finding.verdict).toBe('cannot-tell');
    expect(finding.warnings.join()).toMatch(/check the unit of that column/);
  });

  it('a glitch now and then counts as not recorded', () => {
    const finding = diagnose({ car: CAR, recordings: [scaled((value, i) => (i % 97 === 5 ? 1e300 : value))] });
    expect(finding.causes[0]!.id).toBe('leak');
    expect(finding.diameterMm!.hi90).toBeGreaterThan(HOLE_MM);
    expect(finding.warnings.join()).toMatch(/readings beyond any vapour system/);
  });
});
