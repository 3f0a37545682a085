import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { mappingSchema } from '../../src/recording/mapping.ts';
import { findPhases } from '../../src/recording/phases.ts';
import { findProcedure } from '../../src/recording/procedure.ts';
import { type CsvReadOptions, CsvRecordingReader } from '../../src/recording/read-csv.ts';

const FOLDER = new URL('fixtures/', import.meta.url);
const FILES = readdirSync(FOLDER).filter((name) => name.endsWith('.csv'));
const SENSOR = { minGaugePa: -3700, maxGaugePa: 3700, minV: 0.5, maxV: 4.5 };

/** Reads bytes in pieces of an awkward size, so that pieces end inside characters, cells and lines. */
function read(name: string, options: Partial<CsvReadOptions> = {}, size = 7) {
  const bytes = readFileSync(new URL(name, FOLDER));
  const reader = new CsvRecordingReader({
    fileName: name,
    car: { pressureSensor: SENSOR },
    decoder: (encoding) => new TextDecoder(encoding),
    ...options,
  });
  for (let at = 0; at < bytes.length; at += size) reader.push(bytes.subarray(at, at + size));
  return reader.finish();
}

describe('files of other makes', () => {
  // All are one invented draw: 10 Pa with the vent open for 5 s, drawn to -2000 Pa at 15 s, held to 50 s.
  it.each(FILES)('%s gives the same pressures', (name) => {
    const { recording } = read(name);
    const pressure = recording.channels.tankPressureGaugePa!;
    expect(pressure[0]).toBeCloseTo(10, 1);
    const beforeEnd = pressure[29]!;
    expect(beforeEnd).toBeGreaterThan(-2000);
    expect(beforeEnd).toBeLessThan(-1950);
    if (name.startsWith('volts')) {
      expect(pressure[7]).toBeNaN();
      expect(pressure[8]).toBeNaN();
    } else expect(pressure[7]).toBeCloseTo(10, 1);
    expect(recording.timeS[0]).toBe(0);
    expect(recording.timeS[20]).toBeCloseTo(10, 9);
  });

  it.each(FILES.filter((name) => !/^(utf16|latin1)/.test(name)))('%s shows draw, hold and release', (name) => {
    const { recording } = read(name);
    expect(findProcedure(recording).kind).toBe('vacuum-draw');
    const phases = findPhases(recording);
    expect(phases.map(({ kind }) => kind)).toEqual(['baseline', 'draw', 'settle', 'hold', 'release']);
    expect(phases[1]!.fromS).toBeCloseTo(5, 6);
    expect(phases[2]!.fromS).toBeCloseTo(15, 6);
  });

  it.each(FILES)('%s is read alike in one piece and with its own mapping given back', (name) => {
    const guessed = read(name);
    const whole = read(name, {}, 1e9);
    const saved = mappingSchema.parse(JSON.parse(JSON.stringify(guessed.mapping)));
    const given = read(name, { mapping: saved });
    expect(whole.recording).toEqual(guessed.recording);
    expect(given.recording).toEqual(guessed.recording);
  });

  it.each(FILES)('%s: every line is a sample or counted', (name) => {
    const { report } = read(name);
    const skipped = report.skipped.reduce((sum, { count }) => sum + count, 0);
    expect(report.samples + skipped).toBe(report.linesRead);
  });

  it('counts what was left out and shows where', () => {
    const { report } = read('volts-dates-pause.csv');
    const reasons = report.skipped.map(({ reason, firstLines }) => [reason, firstLines[0]]);
    expect(reasons).toEqual([
      ['header', 1],
      ['duplicated-time', 22],
      ['backward-time', 52],
    ]);
    expect(report.pauses).toEqual([{ fromS: 44.5, toS: 75 }]);
    expect(report.cells.find(({ column }) => column.includes('(V)'))?.missing).toBe(2);
  });

  it('says what is missing when volts come without the range of the sensor', () => {
    const { recording, report } = read('volts-dates-pause.csv', { car: {} });
    expect(recording.channels.tankPressureGaugePa).toBeUndefined();
    expect(recording.channels.tankPressureSensorV).toBeDefined();
    expect(report.warnings.join()).toMatch(/pressureSensor has minGaugePa, maxGaugePa, minV and maxV/);
  });

  it('gives a reason and a confidence for every guess', () => {
    for (const name of FILES)
      for (const { confidence, reasons } of read(name).mapping.columns) {
        expect(confidence).toBeTypeOf('number');
        expect(reasons!.join('')).not.toBe('');
      }
  });
});
