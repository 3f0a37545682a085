/**
 * A live recording from the simulated car at 500 kbit/s: the rate of samples against what the bus allows, and what is kept
 * when the adapter is pulled out again and again.
 *
 * `npx tsx bench/bus/live.ts [seconds] [pulls]`: 20 s and 4 pulls by default; the bar is 600 s and 20 pulls.
 */
import { createReadStream, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { CaptureFile } from '../../src/capture/capture-file.ts';
import { LiveSession } from '../../src/capture/live-session.ts';
import { openPort } from '../../src/capture/open-port.ts';
import { frameSeconds } from '../../src/capture/simulated-car/bus-line.ts';
import { makeCar } from '../../src/capture/simulated-car/make-car.ts';
import { ENGINE_UNIT, serveCar } from '../../src/capture/simulated-car/serve-car.ts';
import { readCapture } from '../../src/recording/bus/read-capture.ts';
import { continueFrame, segmentMessage } from '../../src/recording/bus/segment-message.ts';

const seconds = Number(process.argv[2] ?? 20);
const pulls = Number(process.argv[3] ?? 4);
const BIT_RATE = 500_000;
const LEAST_SHARE = 0.9;
/** Pressure, purge, manifold, speed, short trim, vehicle speed. */
const ITEMS = [0x32, 0x2e, 0x0b, 0x0c, 0x06, 0x0d];
const REPLY_BYTES = 1 + 3 + 2 + 2 + 3 + 2 + 2;

const wait = (ms: number): Promise<void> => new Promise((resolve) => void setTimeout(resolve, ms));
const time = (data: Uint8Array): number => frameSeconds({ id: 0x7e0, extended: false, data }, BIT_RATE);
const roundS =
  ENGINE_UNIT.thinksS +
  [
    ...segmentMessage(Uint8Array.from([1, ...ITEMS])),
    continueFrame(),
    ...segmentMessage(new Uint8Array(REPLY_BYTES)),
  ].reduce((sum, data) => sum + time(data), 0);
const allowedHz = ITEMS.length / roundS;

const folder = mkdtempSync(join(tmpdir(), 'live-'));
const path = join(folder, 'capture.log');
const car = await serveCar(makeCar({ layout: 'engine-vacuum', faults: [], codes: ['P0456'], incomplete: true }), {
  bitRate: BIT_RATE,
});
const file = new CaptureFile(path);
let samplingSince = 0;
let sampledS = 0;
let came = 0;
const session = new LiveSession({
  open: () => openPort(car.address),
  file,
  label: 'live bench',
  items: ITEMS,
  onState: (state) => {
    const now = performance.now() / 1000;
    if (samplingSince > 0) sampledS += now - samplingSince;
    samplingSince = state === 'sampling' ? now : 0;
  },
  onSample: ({ item }) => {
    if (ITEMS.includes(item)) came++;
  },
});
session.start();
while (session.state !== 'sampling') await wait(10);
const before = came;
sampledS = 0;
samplingSince = performance.now() / 1000;
const until = performance.now() + 1000 * seconds;
for (let k = 0; k < pulls; k++) {
  await wait((1000 * seconds) / (pulls + 1) - 300);
  car.unplug();
  await wait(100 + 400 * ((k * 7) % 5) * 0.2);
  await car.plug();
}
while (performance.now() < until || session.state !== 'sampling') await wait(10);
const live = session.reading();
await session.stop();
file.close();
await car.close();
const kept = await readCapture(createReadStream(path), { fileName: 'capture.log' });
rmSync(folder, { recursive: true });

const count = (reading: typeof kept): number =>
  reading.report.items.filter(({ id }) => ITEMS.includes(id)).reduce((sum, { samples }) => sum + samples, 0);
const rateHz = (came - before) / sampledS;
const share = rateHz / allowedHz;
const keptSamples = count(kept);
const result = {
  bench: 'live',
  seconds,
  pulls,
  rateHz,
  allowedHz,
  share,
  came,
  keptSamples,
  liveSamples: count(live),
  reconnections: session.reconnections,
  pausesMarked: kept.report.pauses.length,
  warnings: kept.report.warnings.length,
  met: share >= LEAST_SHARE && keptSamples >= came && kept.report.pauses.length === pulls,
};
for (const [name, value] of Object.entries(result))
  process.stdout.write(`${name.padEnd(16)} ${typeof value === 'number' ? Number(value.toFixed(3)) : value}\n`);
process.stdout.write(`${JSON.stringify(result)}\n`);
