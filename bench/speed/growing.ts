/**
 * What an added second of a growing recording costs: milliseconds of processor time at 10 samples a second, by how long
 * the recording already is. Each length is measured on several recordings, drawn from the finding's own priors.
 *
 * The other kinds of run (pump, sealed tank, refuelling, two faults at once) are measured each over its usual length.
 *
 *   npx tsx bench/speed/growing.ts [longest seconds]
 */
import { GrowingFinding } from '../../src/diagnosis/growing/growing-finding.ts';
import {
  drawAndHold,
  simulateRecording,
  sliceRecording,
  TEST_CAR,
} from '../../src/diagnosis/growing/simulated-recording.ts';
import type { Recording } from '../../src/recording/recording.ts';
import { randomStream } from '../../src/simulation/random.ts';
import type { Car } from '../../src/system/car.ts';
import { OTHER_RUNS } from './growing-runs.ts';

const RATE_HZ = 10;
const BAR_MS = 50;
/** Ends of the stretches [s]. */
const ENDS_S = [30, 60, 120, 240, 480, 900];
const longestS = Number(process.argv[2] ?? 900);
const CASES = [{ form: 'leak', leakDiameterMm: 0.6 }, { form: 'leak', leakDiameterMm: 0.3 }, { form: 'none' }] as const;

/** Processor time of this process [ms]; in it the compiler's and the collector's helpers count as well. */
const processorMs = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e3;
};

interface Second {
  readonly atS: number;
  readonly processor: number;
  readonly wall: number;
  readonly modelSteps: number;
}

function run(which: (typeof CASES)[number], seed: number, lengthS: number): Second[] {
  const recording = simulateRecording(
    {
      procedure: 'vacuum-draw',
      commands: drawAndHold(lengthS, 0),
      lengthS,
      rateHz: RATE_HZ,
      noisePa: 8,
      spread: 0.6,
      engineRuns: true,
      ...which,
    },
    randomStream(seed),
  );
  return follow(recording, TEST_CAR);
}

function follow(recording: Recording, car: Car): Second[] {
  const finding = new GrowingFinding(car, { ...(recording.notes && { notes: recording.notes }) });
  const seconds: Second[] = [];
  for (let s = 0; s * RATE_HZ < recording.timeS.length; s++) {
    const batch = sliceRecording(recording, s * RATE_HZ, (s + 1) * RATE_HZ);
    const wall = performance.now();
    const processor = processorMs();
    const { modelSteps } = finding.add(batch);
    seconds.push({ atS: s + 1, processor: processorMs() - processor, wall: performance.now() - wall, modelSteps });
  }
  return seconds;
}

// once through, so that what is measured is the program and not its compilation
const cold = run(CASES[0], 1, 60);
const seconds = CASES.flatMap((which, i) => run(which, 10 + i, longestS));

const quantile = (x: readonly number[], q: number) => [...x].sort((a, b) => a - b)[Math.floor(q * (x.length - 1))] ?? 0;
const rows = ENDS_S.filter((end) => end <= longestS).map((end, i) => {
  const from = ENDS_S[i - 1] ?? 0;
  const part = seconds.filter((s) => s.atS > from && s.atS <= end);
  const processor = part.map((s) => s.processor);
  return {
    fromS: from,
    toS: end,
    medianMs: quantile(processor, 0.5),
    p95Ms: quantile(processor, 0.95),
    maxMs: Math.max(...processor),
    medianWallMs: quantile(
      part.map((s) => s.wall),
      0.5,
    ),
    medianModelSteps: quantile(
      part.map((s) => s.modelSteps),
      0.5,
    ),
    mostModelSteps: Math.max(...part.map((s) => s.modelSteps)),
  };
});

console.log('history s     processor ms of an added second      wall ms   model steps');
console.log('             median      95 %     largest          median    median    most');
for (const r of rows) {
  const figures = [r.medianMs, r.p95Ms, r.maxMs].map((x) => x.toFixed(1).padStart(10)).join('');
  const steps = `${String(r.medianModelSteps).padStart(10)}${String(r.mostModelSteps).padStart(8)}`;
  console.log(`${`${r.fromS} to ${r.toS}`.padEnd(11)}${figures}${r.medianWallMs.toFixed(1).padStart(16)}${steps}`);
}
const others = OTHER_RUNS.map(({ name, car, record }) => {
  const recording = record(RATE_HZ);
  // the models of each kind are compiled on its first run
  follow(recording, car);
  const part = follow(recording, car);
  const processor = part.map((x) => x.processor);
  return {
    name,
    lengthS: part.length,
    medianMs: quantile(processor, 0.5),
    p95Ms: quantile(processor, 0.95),
    maxMs: Math.max(...processor),
    mostModelSteps: Math.max(...part.map((x) => x.modelSteps)),
    secondsAboveBar: processor.filter((x) => x > BAR_MS).length,
  };
});
console.log('\nother runs                        seconds    median      95 %   largest     above bar   most steps');
for (const r of others) {
  const figures = [r.medianMs, r.p95Ms, r.maxMs].map((x) => x.toFixed(1).padStart(10)).join('');
  console.log(
    `${r.name.padEnd(34)}${String(r.lengthS).padStart(7)}${figures}${String(r.secondsAboveBar).padStart(14)}${String(r.mostModelSteps).padStart(13)}`,
  );
}
const first = quantile(
  cold.map((s) => s.processor),
  0.5,
);
const over = seconds.filter((s) => s.processor > BAR_MS).length;
console.log(
  `bar ${BAR_MS} ms: ${over} of ${seconds.length} seconds above it; first recording of a process: median ${first.toFixed(1)} ms, largest ${Math.max(...cold.map((s) => s.processor)).toFixed(1)} ms`,
);
console.log(
  JSON.stringify({
    bench: 'growing recording',
    rateHz: RATE_HZ,
    barMs: BAR_MS,
    secondsAboveBar: over,
    seconds: seconds.length,
    coldMedianMs: first,
    coldMaxMs: Math.max(...cold.map((s) => s.processor)),
    rows,
    others,
  }),
);
