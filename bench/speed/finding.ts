/**
 * What a whole finding takes: wall time of `diagnose` over all causes, in one process, on recordings of two minutes at
 * 10 samples a second. Each recording is weighed until the program has warmed up, then timed; the median counts.
 *
 *   npx tsx bench/speed/finding.ts [runs]
 */
import { readFileSync } from 'node:fs';
import { scenarioFromFile, scenarioSchema } from '../../src/cli/scenario-file.ts';
import { diagnose } from '../../src/diagnosis/diagnose.ts';
import { simulate } from '../../src/simulation/simulate.ts';

const RUNS = Number(process.argv[2] ?? 5);
const WARM_UP_RUNS = 2;
const BAR_S = 2;
const LENGTH_S = 120;
const BASELINE_S = 12;
const RELEASE_S = 15;

const CASES = [
  { name: 'sound car', faults: [] },
  { name: 'leak of 0.62 mm', faults: [{ kind: 'leak', place: 'neck', size: 0.62e-3 }] },
  { name: 'purge valve seeping', faults: [{ kind: 'purge-seeping', size: 0.8e-3 }] },
  { name: 'vent valve not sealing', faults: [{ kind: 'vent-not-sealing', size: 1.2e-3 }] },
] as const;

const file = new URL('../../examples/small-leak.scenario.json', import.meta.url);
const usual = scenarioSchema.parse(JSON.parse(readFileSync(file, 'utf8')));

/** The example's car with another fault; the hold fills what the draw leaves of two minutes. */
function record(faults: (typeof CASES)[number]['faults']) {
  const play = (holdS: number) => {
    const settings = { ...usual.procedure.settings, baselineS: BASELINE_S, releaseS: RELEASE_S, holdS };
    const scenario = scenarioSchema.parse({ ...usual, faults, procedure: { ...usual.procedure, settings } });
    return simulate(scenarioFromFile(scenario)).recording;
  };
  const first = play(1);
  const withoutHoldS = first.timeS.at(-1)! - 1;
  return play(Math.max(1, LENGTH_S - withoutHoldS));
}

const median = (x: readonly number[]): number => [...x].sort((a, b) => a - b)[Math.floor(x.length / 2)]!;

const rows = CASES.map(({ name, faults }) => {
  const recording = record(faults);
  const seconds: number[] = [];
  for (let run = -WARM_UP_RUNS; run < RUNS; run++) {
    const start = performance.now();
    diagnose({ car: usual.car, recordings: [recording] });
    seconds.push((performance.now() - start) / 1e3);
  }
  const timed = seconds.slice(WARM_UP_RUNS);
  return {
    name,
    samples: recording.timeS.length,
    lengthS: recording.timeS.at(-1)!,
    firstS: seconds[0]!,
    medianS: median(timed),
    largestS: Math.max(...timed),
  };
});

console.log('recording                 samples   first run s   median s   largest s');
for (const r of rows) {
  const times = `${r.firstS.toFixed(2).padStart(14)}${r.medianS.toFixed(2).padStart(11)}${r.largestS.toFixed(2).padStart(12)}`;
  console.log(`${r.name.padEnd(26)}${String(r.samples).padStart(7)}${times}`);
}
console.log(`bar ${BAR_S} s of wall time: ${rows.filter((r) => r.medianS > BAR_S).length} of ${rows.length} above it`);
console.log(JSON.stringify({ bench: 'whole finding', barS: BAR_S, runs: RUNS, rows }));
