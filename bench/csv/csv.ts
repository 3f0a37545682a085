/**
 * Speed of reading a recording from CSV against what the CSV parser alone takes in the same run.
 *
 * `npx tsx bench/csv/csv.ts [rows] [runs]`: makes a file of 13 columns in memory, then in turn lets the
 * parser cut it into cells and the reader make a checked recording of it. Prints a table and one JSON line.
 */
import Papa from 'papaparse';
import { readRecordingCsv } from '../../src/recording/read-csv.ts';

const rows = Number(process.argv[2] ?? 1_000_000);
const runs = Number(process.argv[3] ?? 5);
const PIECE_CHARS = 65_536;
const HEADER =
  'time_s,tank_pressure_pa,purge_duty_pct,vent_closed,fuel_level_pct,ambient_temp_c,fuel_temp_c,baro_kpa,map_kpa,engine_rpm,vehicle_speed_kmh,stft_pct,ltft_pct';

/** A recording with steps and noise like a real one; the same at every run. */
function makeText(count: number): string {
  let seed = 12345;
  const random = (): number => {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
    return seed / 2 ** 32;
  };
  const lines = [HEADER];
  for (let i = 0; i < count; i++) {
    const shut = i % 1200 > 150 && i % 1200 < 1000;
    const drawing = shut && i % 1200 < 260;
    const pressure = shut ? -2500 + (i % 1200) + 40 * random() : 40 * random() - 20;
    lines.push(
      [
        (i / 10 + 0.02 * random()).toFixed(3),
        (Math.round(pressure * 4) / 4).toString(),
        drawing ? (10 + Math.round(100 * random()) / 10).toString() : '0',
        shut ? '1' : '0',
        (Math.round(250 * (0.6 + 0.01 * random())) / 2.5).toFixed(1),
        '21',
        '24.5',
        '98.7',
        Math.round(32 + 3 * random()).toString(),
        Math.round(690 + 40 * random()).toString(),
        '0',
        (Math.round(10 * random() - 5) * 0.78).toFixed(2),
        '-1.56',
      ].join(','),
    );
  }
  return `${lines.join('\n')}\n`;
}

const median = (values: number[]): number => values.sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

function time(work: () => void): number {
  const start = process.hrtime.bigint();
  work();
  return Number(process.hrtime.bigint() - start) / 1e9;
}

/** The parser at its fastest: cells cut from pieces, so that not all are held at once. */
function cutAlone(whole: string): void {
  const cutter = new Papa.Parser({ delimiter: ',', newline: '\n' });
  let rest = whole;
  let cells = 0;
  while (rest !== '') {
    const last = rest.length <= PIECE_CHARS;
    const { data, meta } = cutter.parse(last ? rest : rest.slice(0, PIECE_CHARS), 0, !last);
    for (const row of data as string[][]) cells += row.length;
    rest = last ? '' : rest.slice(meta.cursor);
  }
  if (cells < 13 * rows) throw new Error(`the parser gave ${cells} cells of ${13 * rows}`);
}

const text = makeText(rows);
const megabytes = text.length / 1e6;
const parser: number[] = [];
const reader: number[] = [];
for (let run = 0; run < runs; run++) {
  parser.push(time(() => cutAlone(text)));
  reader.push(
    time(() => {
      const { recording } = readRecordingCsv(text, { fileName: 'made in memory' });
      if (recording.timeS.length !== rows)
        throw new Error(`the reader gave ${recording.timeS.length} of ${rows} samples`);
    }),
  );
}
const parserS = median(parser);
const readerS = median(reader);
const report = {
  bench: 'csv',
  rows,
  columns: 13,
  megabytes,
  runs,
  parserS,
  readerS,
  ratio: readerS / parserS,
  megabytesPerS: megabytes / readerS,
  peakMemoryMb: process.resourceUsage().maxRSS / 1024,
};
const line = (name: string, seconds: number): string =>
  `${name.padEnd(34)}${seconds.toFixed(2).padStart(8)} s ${(megabytes / seconds).toFixed(0).padStart(8)} MB/s`;
console.log(`${rows} rows of 13 columns, ${megabytes.toFixed(1)} MB, median of ${runs} runs`);
console.log(line('parser alone', parserS));
console.log(line('read, mapped and checked', readerS));
console.log(`${'ratio'.padEnd(34)}${report.ratio.toFixed(2).padStart(8)}`);
console.log(JSON.stringify(report));
