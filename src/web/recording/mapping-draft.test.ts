import { describe, expect, it } from 'vitest';
import { mappingSchema } from '../../recording/mapping.ts';
import { readRecordingCsv } from '../../recording/read-csv.ts';
import { claimedTwice, emptyMapping, setChannel, setColumn, setTime, unitsFor } from './mapping-draft.ts';

const header = ['Zeit', 'Druck', 'Ventil'];
const rows = Array.from({ length: 60 }, (_, k) => `${k};${(-0.1 * k).toFixed(1).replace('.', ',')};1`);
const file = `${header.join(';')}\n${rows.join('\n')}\n`;

describe('a mapping corrected by hand', () => {
  it('reads a file that says nothing of itself', () => {
    let mapping = setTime(emptyMapping(header), header, { columns: ['Zeit'], format: 'seconds' });
    mapping = setChannel(mapping, 'Druck', 'tankPressureGaugePa');
    mapping = setColumn(mapping, 'Druck', { unit: 'kPa' });
    mapping = setChannel(mapping, 'Ventil', 'ventClosed');
    mapping = setColumn(mapping, 'Ventil', { inverted: true });
    expect(mappingSchema.safeParse(mapping).success).toBe(true);
    const { recording } = readRecordingCsv(file, { fileName: 'x.csv', mapping });
    expect(recording.channels.tankPressureGaugePa?.[10]).toBeCloseTo(-1000, 6);
    expect(recording.channels.ventClosed?.[10]).toBe(0);
  });

  it('forgets unit and zero that do not belong to the new channel', () => {
    const pressure = setChannel(emptyMapping(header), 'Druck', 'tankPressureGaugePa');
    const level = setChannel(pressure, 'Druck', 'fuelLevel').columns.find(({ column }) => column === 'Druck')!;
    expect(level).toEqual({ column: 'Druck', channel: 'fuelLevel', unit: '%' });
    expect(unitsFor('fuelTemperatureK')).toContain('°F');
    expect(unitsFor('pumpOn')).toEqual([]);
  });

  it('sees a channel that two columns claim', () => {
    const twice = setChannel(setChannel(emptyMapping(header), 'Druck', 'fuelLevel'), 'Ventil', 'fuelLevel');
    expect(claimedTwice(twice)).toBe('fuelLevel');
    expect(claimedTwice(emptyMapping(header))).toBeNull();
  });
});
