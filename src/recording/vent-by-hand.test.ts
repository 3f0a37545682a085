import { describe, expect, it } from 'vitest';
import { CaptureReader } from './bus/read-capture.ts';
import { readRecordingCsv } from './read-csv.ts';
import type { RecordingNotes } from './recording.ts';

/** Item $32, two bytes in quarters of a pascal, each half second. */
const capture = Array.from(
  { length: 20 },
  (_, i) => `(${(1_700_000_000 + i / 2).toFixed(6)}) can0 7E8#044132FE0C000000`,
);
const read = (notes: RecordingNotes) => {
  const reader = new CaptureReader({ fileName: 'a.log', notes });
  reader.push(new TextEncoder().encode(`${capture.join('\n')}\n`));
  return reader.finish();
};

describe('the vent marked by hand', () => {
  it('becomes the command of a capture, on its own clock', () => {
    const ventShutS = [{ fromS: 1_700_000_002, toS: 1_700_000_004 }, { fromS: 1_700_000_008 }];
    const { recording, report } = read({ procedure: 'engine-off', ventShutS });
    expect([...recording!.channels.ventClosed!].join('')).toBe('00001111100000001111');
    expect(recording!.notes!.ventShutS).toEqual([{ fromS: 2, toS: 4 }, { fromS: 8 }]);
    expect(report.warnings.join()).toContain('by hand');
  });

  it('becomes a channel of a table that has none, and never replaces one that is recorded', () => {
    const notes = { ventShutS: [{ fromS: 101 }] };
    const bare = readRecordingCsv('time_s,tank_pressure_pa\n100,0\n101,-5\n102,-9\n', { fileName: 'a.csv', notes });
    expect([...bare.recording.channels.ventClosed!]).toEqual([0, 1, 1]);
    const text = 'time_s,tank_pressure_pa,vent_closed\n100,0,1\n101,-5,0\n102,-9,0\n';
    const told = readRecordingCsv(text, { fileName: 'a.csv', notes });
    expect([...told.recording.channels.ventClosed!]).toEqual([1, 0, 0]);
  });
});
