import { describe, expect, it } from 'vitest';
import { CsvError, type CsvReadOptions, CsvRecordingReader, readRecordingCsv } from './read-csv.ts';

const read = (text: string, options: Partial<CsvReadOptions> = {}) =>
  readRecordingCsv(text, { fileName: 'a.csv', ...options });

function errorOf(text: string, options: Partial<CsvReadOptions> = {}): CsvError {
  try {
    read(text, options);
  } catch (error) {
    if (error instanceof CsvError) return error;
    throw error;
  }
  throw new Error('the text was read without an error');
}

const rows = (count: number, row: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => row(i)).join('\n');

describe('a wrong file', () => {
  it.each([
    ['', /empty file/],
    ['\n\n \n', /empty file/],
    ['\u001f\u008b\u0008\u0000', /gzip file/],
    ['PK\u0003\u0004abc', /zip archive or spreadsheet/],
    ['%PDF-1.7', /PDF/],
    ['{"a": 1}', /JSON/],
    ['<!doctype html><html></html>', /HTML/],
    [`MZ${'\u0000\u0001'.repeat(50)}`, /binary data/],
    ['just one line of prose', /table of numbers with a time column/],
    [`time_s\n${rows(20, String)}`, /table of numbers with a time column and at least one more/],
    [`engine_rpm,map_kpa\n${rows(20, (i) => `${700 + (i % 3)},${30 + (i % 2)}`)}`, /one that holds the time/],
    [`time_s,gear\n${rows(20, (i) => `${i},3`)}`, /at least one channel/],
    [rows(20, (i) => `${i},${-i * 40}`), /a header line that names the 2 columns/],
    ['time_s,tank_pressure_pa\n0,1\n', /at least 2 samples/],
  ])('%# gets an error that says what it is', (text, message) => {
    const error = errorOf(text);
    expect(error.message).toMatch(message);
    expect(error.message).toMatch(/^a\.csv, line [12]:/);
    expect(error.facts.whatToDo).not.toBe('');
  });

  it('of half a recording in a wrong shape names the first such line', () => {
    const error = errorOf(
      `time_s,tank_pressure_pa\n${rows(10, (i) => `${i},5`)}\n${rows(10, (i) => `${i + 10},5,7,8`)}`,
    );
    expect(error.facts).toMatchObject({ line: 12, expected: 'lines shaped like the header' });
  });

  it('with a spoilt column names line, column and cell', () => {
    const error = errorOf(`time_s,map_kpa,tank_pressure_pa\n${rows(40, (i) => `${i},30,${i % 3 === 2 ? 'ERR' : i}`)}`);
    expect(error.facts).toMatchObject({ line: 4, column: 3, cell: 'tank_pressure_pa' });
    expect(error.message).toMatch(/a\.csv, line 4, column 3 "tank_pressure_pa": found "ERR" \(13 such cells of 40\)/);
  });

  it('with two recordings in it names the line where the second starts', () => {
    const part = rows(50, (i) => `${i},${i}`);
    expect(errorOf(`time_s,tank_pressure_pa\n${part}\n${part}`).facts.line).toBe(52);
  });

  it('with an open quote names its line', () => {
    const error = errorOf(
      `time_s,tank_pressure_pa\n${rows(10, (i) => `${i},${i}`)}\n10,"11\n${rows(10, (i) => `${i + 11},7`)}`,
    );
    expect(error.facts.line).toBe(12);
  });
});

describe('pressures', () => {
  const pressures = (header: string, cell: (i: number) => string, extra = ''): string =>
    `time_s,${header}${extra && ',baro_kpa'}\n${rows(40, (i) => `${i},${cell(i)}${extra && `,${extra}`}`)}`;

  it('that are absolute by their size need a barometric pressure', () => {
    const text = pressures('Tank pressure (kPa)', (i) => (98.4 - i / 100).toFixed(2));
    expect(errorOf(text).message).toMatch(/absolute pressure and no barometric pressure.*barometricAbsPa/s);
    const given = read(text, { barometricAbsPa: 98_400 });
    expect(given.recording.channels.tankPressureGaugePa![10]).toBeCloseTo(-100, 6);
    const recorded = read(pressures('Tank pressure (kPa)', (i) => (98.4 - i / 100).toFixed(2), '98'));
    expect(recorded.recording.channels.tankPressureGaugePa![10]).toBeCloseTo(300, 6);
    expect(recorded.report.warnings.join()).toMatch(/as coarse as 1 kPa/);
  });

  it('small numbers without a unit are refused, with the mapping to correct', () => {
    const error = errorOf(pressures('Tank pressure', (i) => (-i / 10).toFixed(1)));
    expect(error.message).toMatch(/without a unit/);
    const mapping = error.facts.mapping!;
    const column = mapping.columns.find(({ channel }) => channel === 'tankPressureGaugePa')!;
    const fixed = { ...mapping, columns: [{ ...column, unit: 'inH2O' }] };
    const { recording } = read(
      pressures('Tank pressure', (i) => (-i / 10).toFixed(1)),
      { mapping: fixed },
    );
    // 1 inH2O = 249.08891 Pa (NIST SP 811, conventional).
    expect(recording.channels.tankPressureGaugePa![10]).toBeCloseTo(-249.08891, 3);
  });

  it('in a unit that is none of pressure are refused with the units that fit', () => {
    const mapping = {
      schema: 'vaporwright-mapping-1' as const,
      columns: [{ column: 'p', channel: 'tankPressureGaugePa' as const, unit: 'mph' }],
    };
    expect(errorOf(pressures('p', String), { mapping }).message).toMatch(/the unit "mph".*unit of pressure/s);
  });

  it('a mapping that names a column that is not there is refused', () => {
    const mapping = {
      schema: 'vaporwright-mapping-1' as const,
      columns: [{ column: 'q', channel: 'tankPressureGaugePa' as const, unit: 'Pa' }],
    };
    expect(errorOf(pressures('p', String), { mapping }).message).toMatch(/a column "q", which the mapping names/);
  });
});

describe('columns', () => {
  it('that say the opposite are turned round', () => {
    const text = `time_s,tank_pressure_pa,Vent open\n${rows(20, (i) => `${i},${i},${i < 5 ? 'yes' : 'no'}`)}`;
    const { recording } = read(text);
    expect([...recording.channels.ventClosed!].slice(3, 7)).toEqual([0, 0, 1, 1]);
  });

  it('of other things are left out with a reason', () => {
    const text = `time_s,tank_pressure_pa,Fuel rail pressure (kPa),Oil temp,STFT bank 2 (%)\n${rows(20, (i) => `${i},${i},350,90,1`)}`;
    const { recording, report } = read(text);
    expect(Object.keys(recording.channels)).toEqual(['tankPressureGaugePa']);
    expect(report.ignoredColumns.map(({ column }) => column)).toEqual([
      'Fuel rail pressure (kPa)',
      'Oil temp',
      'STFT bank 2 (%)',
    ]);
  });

  it('one wrong cell in an on/off column is absent and counted, and turns nothing else', () => {
    const text = `time_s,tank_pressure_pa,vent_closed\n${rows(40, (i) => `${i},${i},${i === 7 ? 9 : i > 20 ? 1 : 0}`)}`;
    const { recording, report } = read(text);
    expect(recording.channels.ventClosed![7]).toBeNaN();
    expect(recording.channels.ventClosed![30]).toBe(1);
    expect(report.cells.find(({ column }) => column === 'vent_closed')).toMatchObject({ unreadable: 1 });
  });

  it('without a header are called by number through a mapping', () => {
    const mapping = {
      schema: 'vaporwright-mapping-1' as const,
      headerLine: 0,
      time: { columns: ['column 1'], format: 'milliseconds' as const },
      columns: [{ column: 'column 2', channel: 'tankPressureGaugePa' as const, unit: 'hPa' }],
    };
    const { recording } = read(
      rows(20, (i) => `${i * 100},${-i}`),
      { mapping },
    );
    expect(recording.timeS[10]).toBeCloseTo(1, 12);
    expect(recording.channels.tankPressureGaugePa![10]).toBeCloseTo(-1000, 9);
  });

  it('read with a doubtful unit give a warning', () => {
    const { report } = read(`time_s,tank_pressure_pa,Outside air temp\n${rows(20, (i) => `${i},${i},21`)}`);
    expect(report.warnings.join()).toMatch(/may be °F/);
    const wrong = read(`time_s,tank_pressure_pa,Outside air temp (C)\n${rows(20, (i) => `${i},${i},88`)}`);
    expect(wrong.report.warnings.join()).toMatch(/check its unit/);
  });
});

describe('time', () => {
  it('starts at the first sample, and the noted shut-off times move with it', () => {
    const text = `time_s,tank_pressure_pa\n${rows(20, (i) => `${i + 100},${i}`)}`;
    const { recording, report } = read(text, { notes: { shutOffTimesS: [110] } });
    expect(recording.timeS[0]).toBe(0);
    expect(report.firstTimeS).toBe(100);
    expect(recording.notes!.shutOffTimesS).toEqual([10]);
  });

  it('of ambiguous dates is reported', () => {
    const text = `Timestamp,tank_pressure_pa\n${rows(20, (i) => `03/05/2024 10:00:${10 + i},${i}`)}`;
    expect(read(text).report.warnings.join()).toMatch(/no number above 12 tells day from month/);
  });
});

describe('a clock set for summer time while recording', () => {
  const two = (n: number): string => String(n).padStart(2, '0');
  /** Twenty minutes from 01:50, the clock set by `shift` hours at the next full hour. */
  const text = (zone: string, shift: number): string => {
    const lines = rows(1200, (i) => {
      const hour = 1 + (i >= 600 ? 1 + shift : 0);
      return `2026-10-25T${two(hour)}:${two((50 + Math.floor(i / 60)) % 60)}:${two(i % 60)}${zone},${-i % 40}`;
    });
    return `Timestamp,tank_pressure_pa\n${lines}`;
  };

  it.each([1, -1])('goes on without an hour’s pause, and says so (%d h)', (shift) => {
    const { recording, report } = read(text('', shift));
    expect(recording.timeS.length).toBe(1200);
    expect(recording.timeS.at(-1)).toBe(1199);
    expect(report.pauses).toEqual([]);
    expect(report.warnings.join()).toMatch(/clock was set (forward|back) by an hour at line 602/);
  });

  it('a time that states its offset is taken as it stands', () => {
    expect(read(text('Z', 1)).report.pauses).toHaveLength(1);
  });
});

it('on/off words may be German', () => {
  const { recording } = read(
    `time_s,tank_pressure_pa,vent_closed,Purge valve\n${rows(20, (i) => `${i},${-i},${i % 2 ? 'ZU' : 'auf'},${i % 2 ? 'Ein' : 'Aus'}`)}`,
  );
  expect([...recording.channels.ventClosed!.slice(0, 2)]).toEqual([0, 1]);
  expect([...recording.channels.purgeDuty!.slice(0, 2)]).toEqual([0, 1]);
});

describe('CsvRecordingReader', () => {
  it('needs a decoder for bytes', () => {
    const reader = new CsvRecordingReader({ fileName: 'a.csv' });
    reader.push(new Uint8Array([116]));
    expect(() => reader.finish()).toThrow(/no decoder/);
  });

  it('gives the same for any division of a long text', () => {
    const text = `time_s,tank_pressure_pa,vent_closed\n${rows(40_000, (i) => `${(i / 10).toFixed(1)},${-i},${i % 2}`)}`;
    const whole = read(text);
    const reader = new CsvRecordingReader({ fileName: 'a.csv' });
    for (let at = 0; at < text.length; at += 10_007) reader.push(text.slice(at, at + 10_007));
    const pieces = reader.finish();
    expect(pieces.recording.timeS.length).toBe(40_000);
    expect(pieces).toEqual(whole);
  });
});
