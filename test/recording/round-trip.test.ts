import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { CsvError, readRecordingCsv } from '../../src/recording/read-csv.ts';
import { CHANNELS, type ChannelName, type Recording } from '../../src/recording/recording.ts';
import { writeRecordingCsv } from '../../src/recording/write-csv.ts';

/** Plausible range of each channel in SI. */
const RANGE: Record<ChannelName, [number, number]> = {
  tankPressureGaugePa: [-4000, 4000],
  tankPressureSensorV: [0, 5],
  canisterPressureGaugePa: [-4000, 4000],
  pumpPressureGaugePa: [-4000, 0],
  purgeDuty: [0, 1],
  ventClosed: [0, 1],
  isolationOpen: [0, 1],
  pumpOn: [0, 1],
  changeoverToTank: [0, 1],
  fuelLevel: [0, 1],
  ambientTemperatureK: [240, 320],
  fuelTemperatureK: [240, 330],
  coolantTemperatureK: [240, 390],
  intakeTemperatureK: [240, 350],
  barometricPa: [60_000, 105_000],
  manifoldAbsPa: [20_000, 200_000],
  engineSpeedRpm: [0, 7000],
  vehicleSpeedMPerS: [0, 60],
  shortTrim: [-0.3, 0.3],
  longTrim: [-0.3, 0.3],
  fillFlowM3PerS: [0, 0.001],
};
const SWITCHES = new Set<ChannelName>(['ventClosed', 'isolationOpen', 'pumpOn', 'changeoverToTank']);

const recordings: fc.Arbitrary<Recording> = fc
  .record({
    channels: fc.subarray(Object.keys(CHANNELS) as ChannelName[], { minLength: 1 }),
    steps: fc.array(fc.integer({ min: 1, max: 3000 }), { minLength: 1, maxLength: 40 }),
  })
  .chain(({ channels, steps }) => {
    const n = steps.length + 1;
    const timeS = new Float64Array(n);
    steps.forEach((step, i) => {
      timeS[i + 1] = (Math.round(timeS[i]! * 1000) + step) / 1000;
    });
    return fc
      .tuple(
        ...channels.map((channel) => {
          const [low, high] = RANGE[channel];
          const value = SWITCHES.has(channel) ? fc.constantFrom(0, 1) : fc.double({ min: low, max: high, noNaN: true });
          const cell = fc.oneof({ weight: 9, arbitrary: value }, { weight: 1, arbitrary: fc.constant(Number.NaN) });
          // The first sample is there, or the column would be empty and no channel at all.
          return fc
            .tuple(value, fc.array(cell, { minLength: n - 1, maxLength: n - 1 }))
            .map(([a, rest]) => [a, ...rest]);
        }),
      )
      .map((columns) => ({
        timeS,
        label: 'any',
        channels: Object.fromEntries(channels.map((channel, k) => [channel, Float64Array.from(columns[k]!)])),
      }));
  });

const close = (read: number, written: number, scale: number): boolean =>
  Number.isNaN(written) ? Number.isNaN(read) : Math.abs(read - written) <= 1e-9 * scale;

function expectSame(read: Recording, written: Recording, tolerance = 1): void {
  expect([...read.timeS]).toEqual([...written.timeS]);
  for (const [channel, values] of Object.entries(written.channels) as [ChannelName, Float64Array][]) {
    const scale = tolerance * Math.max(...RANGE[channel].map(Math.abs));
    const got = read.channels[channel];
    expect(got?.length, channel).toBe(values.length);
    values.forEach((value, i) => {
      expect(close(got![i]!, value, scale), `${channel} ${i}: ${got![i]} for ${value}`).toBe(true);
    });
  }
}

describe('our own CSV', () => {
  it('gives back what was written, for any recording', () => {
    fc.assert(
      fc.property(recordings, (recording) => {
        const { recording: read, report } = readRecordingCsv(writeRecordingCsv(recording), { fileName: 'any.csv' });
        expectSame(read, recording);
        expect(report.skipped.map(({ reason }) => reason)).toEqual(['header']);
      }),
      { numRuns: 200 },
    );
  });
});

/** Ways to write the same numbers, with the factor and offset from SI, from published definitions. */
const PRESSURE: [string, (pa: number) => number][] = [
  ['(Pa)', (pa) => pa],
  ['[kPa]', (pa) => pa / 1000],
  ['(mbar)', (pa) => pa / 100],
  ['(psi)', (pa) => pa / 6894.757293168],
  ['(inH2O)', (pa) => pa / 249.08891],
  ['(mmHg)', (pa) => pa / 133.322387415],
  ['(inHg)', (pa) => pa / 3386.388640341],
];
const TEMPERATURE: [string, (k: number) => number][] = [
  ['(°C)', (k) => k - 273.15],
  ['[degF]', (k) => ((k - 273.15) * 9) / 5 + 32],
  ['(K)', (k) => k],
];
const SPEED: [string, (v: number) => number][] = [
  ['(km/h)', (v) => v * 3.6],
  ['(mph)', (v) => v / 0.44704],
  ['(m/s)', (v) => v],
];
const PRESSURE_NAMES = ['Fuel tank pressure', 'EVAP vapor pressure', 'Tank Pressure', 'FTP'];
const VENT_WORDS = [
  ['open', 'closed'],
  ['off', 'on'],
  ['0', '1'],
  ['false', 'true'],
  ['0', '100'],
] as const;

const styles = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  comma: fc.boolean(),
  newline: fc.constantFrom('\n', '\r\n'),
  bom: fc.boolean(),
  quoted: fc.boolean(),
  preamble: fc.integer({ min: 0, max: 3 }),
  pressure: fc.constantFrom(...PRESSURE),
  pressureName: fc.constantFrom(...PRESSURE_NAMES),
  temperature: fc.constantFrom(...TEMPERATURE),
  speed: fc.constantFrom(...SPEED),
  vent: fc.constantFrom(...VENT_WORDS),
  time: fc.constantFrom('seconds', 'ms', 'clock', 'iso'),
  repeatHeader: fc.boolean(),
});

const rows = fc.array(
  fc.record({
    pa: fc.integer({ min: -4000, max: 4000 }),
    k: fc.integer({ min: 250, max: 320 }),
    v: fc.integer({ min: 0, max: 50 }),
    shut: fc.boolean(),
  }),
  { minLength: 3, maxLength: 30 },
);

const two = (x: number): string => String(x).padStart(2, '0');

describe('a CSV in any style', () => {
  it('is read to the same recording', () => {
    fc.assert(
      fc.property(styles, rows, (style, samples) => {
        // Decimal commas between unquoted cells parted by commas cannot be told apart by anyone.
        const quoted = style.quoted || (style.comma && style.delimiter === ',');
        const cell = (text: string): string => (quoted ? `"${text}"` : text);
        const number = (x: number): string => {
          const text = String(Number(x.toPrecision(13)));
          return cell(style.comma ? text.replace('.', ',') : text);
        };
        const time = (i: number): string => {
          const s = i * 0.25;
          if (style.time === 'seconds') return number(s);
          if (style.time === 'ms') return number(s * 1000);
          const clock = `23:${two(59 + Math.floor((30 + s) / 60)).slice(-2)}:${(30 + (s % 60)).toFixed(3)}`;
          return cell(style.time === 'clock' ? clock : `2024-06-30T${clock}`);
        };
        const timeName = { seconds: 'Time (s)', ms: 'Time (ms)', clock: 'Time', iso: 'Timestamp' }[style.time];
        const header = [
          timeName,
          `${style.pressureName} ${style.pressure[0]}`,
          `Ambient air temperature ${style.temperature[0]}`,
          `Vehicle speed ${style.speed[0]}`,
          'Vent valve',
        ]
          .map(cell)
          .join(style.delimiter);
        const lines = samples.map(({ pa, k, v, shut }, i) =>
          [
            time(i),
            number(style.pressure[1](pa)),
            number(style.temperature[1](k)),
            number(style.speed[1](v)),
            cell(style.vent[shut ? 1 : 0]),
          ].join(style.delimiter),
        );
        if (style.repeatHeader) lines.splice(2, 0, header);
        const preamble = ['Recorded on the road', 'Driver: any', 'no remark'].slice(0, style.preamble);
        const text = (style.bom ? '\ufeff' : '') + [...preamble, header, ...lines, ''].join(style.newline);

        const { recording, report } = readRecordingCsv(text, { fileName: 'any.csv' });
        const get = (channel: ChannelName): number[] => [...recording.channels[channel]!];
        samples.forEach(({ pa, k, v, shut }, i) => {
          expect(recording.timeS[i]).toBeCloseTo(i * 0.25, 6);
          expect(get('tankPressureGaugePa')[i]).toBeCloseTo(pa, 5);
          expect(get('ambientTemperatureK')[i]).toBeCloseTo(k, 7);
          expect(get('vehicleSpeedMPerS')[i]).toBeCloseTo(v, 7);
          expect(get('ventClosed')[i]).toBe(shut ? 1 : 0);
        });
        expect(report.samples).toBe(samples.length);
        const skipped = report.skipped.reduce((sum, { count }) => sum + count, 0);
        expect(report.samples + skipped).toBe(report.linesRead);
      }),
      { numRuns: 300 },
    );
  });
});

describe('a damaged file', () => {
  const sound = writeRecordingCsv({
    label: 'sound',
    timeS: Float64Array.from({ length: 60 }, (_, i) => i / 2),
    channels: {
      tankPressureGaugePa: Float64Array.from({ length: 60 }, (_, i) => -1500.25 + 10 * i),
      purgeDuty: Float64Array.from({ length: 60 }, (_, i) => (i % 7) / 10),
      ventClosed: Float64Array.from({ length: 60 }, (_, i) => (i > 10 && i < 40 ? 1 : 0)),
      ambientTemperatureK: new Float64Array(60).fill(294.15),
    },
  });
  const original = readRecordingCsv(sound, { fileName: 'sound.csv' }).recording;
  const bodyAt = sound.indexOf('\n') + 1;

  /** Damage that can be seen: characters that no number holds, lost delimiters and line ends, a cut end. */
  const damage = fc.oneof(
    fc.record({
      kind: fc.constant('put' as const),
      at: fc.nat(),
      text: fc.constantFrom('x', '?', '#', '""', ':', 'NaN', '\u0001', '%%'),
    }),
    fc.record({ kind: fc.constant('lose-comma' as const), at: fc.nat(), text: fc.constant('') }),
    fc.record({ kind: fc.constant('lose-line-end' as const), at: fc.nat(), text: fc.constant('') }),
    fc.record({ kind: fc.constant('cut' as const), at: fc.nat(), text: fc.constant('') }),
    fc.record({ kind: fc.constant('twice' as const), at: fc.nat(), text: fc.constant('') }),
    fc.record({ kind: fc.constant('quote' as const), at: fc.nat(), text: fc.constant('"') }),
  );

  function apply(text: string, { kind, at, text: put }: { kind: string; at: number; text: string }): string {
    const place = bodyAt + (at % (text.length - bodyAt));
    const without = (wanted: string): string => {
      const found = text.indexOf(wanted, place);
      return found < 0 ? text : text.slice(0, found) + text.slice(found + wanted.length);
    };
    if (kind === 'lose-comma') return without(',');
    if (kind === 'lose-line-end') return without('\r\n');
    if (kind === 'cut') return text.slice(0, Math.max(place, bodyAt + 200));
    if (kind === 'twice') {
      const from = text.lastIndexOf('\n', place) + 1;
      const to = text.indexOf('\n', from) + 1;
      return to <= 0 ? text : text.slice(0, to) + text.slice(from, to) + text.slice(to);
    }
    return text.slice(0, place) + put + text.slice(place);
  }

  it('gives true values, or absent ones that are counted, or an error with a line; never wrong ones', () => {
    fc.assert(
      fc.property(fc.array(damage, { minLength: 1, maxLength: 4 }), (damages) => {
        const text = damages.reduce(apply, sound);
        let read: ReturnType<typeof readRecordingCsv>;
        try {
          read = readRecordingCsv(text, { fileName: 'damaged.csv' });
        } catch (error) {
          expect(error).toBeInstanceOf(CsvError);
          expect((error as CsvError).message).toMatch(/^damaged\.csv, line \d+/);
          return;
        }
        const { recording, report } = read;
        const skipped = report.skipped.reduce((sum, { count }) => sum + count, 0);
        expect(report.samples + skipped).toBe(report.linesRead);
        const absent: Record<string, number> = {};
        recording.timeS.forEach((t, i) => {
          const clock = t + report.firstTimeS;
          const at = original.timeS.indexOf(clock);
          // A cut may shorten the last number; that line then has too few cells unless it ended in it.
          const lastOfCut = i === recording.timeS.length - 1 && damages.some(({ kind }) => kind === 'cut');
          if (lastOfCut) return;
          expect(at, `time ${clock}`).toBeGreaterThanOrEqual(0);
          for (const [channel, values] of Object.entries(recording.channels) as [ChannelName, Float64Array][]) {
            const value = values[i]!;
            if (Number.isNaN(value)) absent[channel] = (absent[channel] ?? 0) + 1;
            else expect(value, channel).toBe(original.channels[channel]![at]!);
          }
        });
        const absentCount = Object.values(absent).reduce((sum, each) => sum + each, 0);
        const counted = report.cells.reduce((sum, { missing, unreadable }) => sum + missing + unreadable, 0);
        expect(absentCount).toBeLessThanOrEqual(counted);
      }),
      { numRuns: 500 },
    );
  });
});
