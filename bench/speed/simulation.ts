/**
 * How fast the simulation is: simulated seconds per second for each layout, and, on one vacuum draw with a fixed
 * schedule, the ratio to scipy's LSODA and BDF and to CVODE in C, at the same tolerance and in the same run, each with
 * the error it really made against a tight reference. What is not installed is skipped with a message.
 *
 *   npx tsx bench/speed/simulation.ts
 */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { initialState } from '../../src/simulation/initial-state.ts';
import { NetworkEquations } from '../../src/simulation/network-equations.ts';
import { inputVector, Outside } from '../../src/simulation/outside.ts';
import { vacuumDraw } from '../../src/simulation/procedures/vacuum-draw.ts';
import { absoluteTolerances } from '../../src/simulation/run-procedure.ts';
import type { Scenario } from '../../src/simulation/scenario.ts';
import { simulate } from '../../src/simulation/simulate.ts';
import { typicalScenario } from '../../src/simulation/typical-scenarios.ts';
import { LAYOUTS } from '../../src/system/car.ts';
import { cvodeProblem } from './cvode-problem.ts';

const TOLERANCE = 1e-5;
const tool = (name: string) => fileURLToPath(new URL(`../../tools/${name}`, import.meta.url));

/** Least time of several batches: what the machine can do when nothing else runs. */
function bestSeconds(run: () => void, perBatch: number, batches: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let b = 0; b < batches; b++) {
    const start = performance.now();
    for (let k = 0; k < perBatch; k++) run();
    best = Math.min(best, (performance.now() - start) / perBatch / 1000);
  }
  return best;
}

interface Row {
  readonly method: string;
  readonly seconds: number;
  readonly simulatedS: number;
  readonly evaluations: number;
  readonly steps?: number;
  readonly errorPa?: number;
}

const layouts = LAYOUTS.map((layout) => {
  const scenario = typicalScenario(layout, [{ kind: 'leak', place: 'cap', size: 0.5e-3 }]);
  let run = simulate(scenario);
  if (run.failure !== undefined) throw new Error(`${layout}: ${run.failure.words}`);
  for (let k = 0; k < 20; k++) run = simulate(scenario);
  const seconds = bestSeconds(() => simulate(scenario), 5, 8);
  const simulatedS = run.steps.at(-1)!.toS;
  return { layout, simulatedS, milliseconds: 1e3 * seconds, perSecond: simulatedS / seconds, steps: run.work.accepted };
});

console.log('layout            simulated s   ms     simulated s per s   steps');
for (const l of layouts) {
  const figures = [l.simulatedS.toFixed(0).padStart(11), l.milliseconds.toFixed(2).padStart(7)];
  console.log(
    `${l.layout.padEnd(18)}${figures.join('')}${l.perSecond.toFixed(0).padStart(17)}${String(l.steps).padStart(9)}`,
  );
}

/** The same draw with fixed times, so that all methods do the same work. */
function timedDraw(): Scenario & { golden: { timesS: number[]; spaces: string[] } } {
  const typical = typicalScenario('engine-vacuum', [{ kind: 'leak', place: 'cap', size: 0.5e-3 }]);
  const drawS = simulate(typical).steps[1]!;
  const timed = vacuumDraw({ drawTimeOutS: Number((drawS.toS - drawS.fromS).toFixed(3)) });
  const steps = timed.steps.map(({ endsWhen: _, ...step }) => step);
  const endS = steps.reduce((sum, s) => sum + s.longestS, 0);
  const timesS = Array.from({ length: Math.floor(endS * 10) }, (_, i) => (i + 1) / 10);
  return {
    ...typical,
    // The fill-limit valve cannot move here; without its watch no method has events to find.
    network: { ...typical.network, fillLimit: { ...typical.network.fillLimit, stuck: 'open' } },
    procedure: { ...timed, steps },
    relativeTolerance: TOLERANCE,
    golden: { timesS, spaces: ['tank'] },
  };
}

const scenario = timedDraw();
const reference = simulate({ ...scenario, relativeTolerance: 1e-10 }, { trace: ['tank.gaugePa'] });
const ours = simulate(scenario, { trace: ['tank.gaugePa'] });
let worst = 0;
ours.traces[0]!.value.forEach((v, i) => {
  worst = Math.max(worst, Math.abs(v - reference.traces[0]!.value[i]!));
});
for (let k = 0; k < 300; k++) simulate(scenario);
const rows: Row[] = [
  {
    method: 'this project',
    seconds: bestSeconds(() => simulate(scenario), 20, 20),
    simulatedS: scenario.golden.timesS.at(-1)!,
    evaluations: ours.work.evaluations,
    steps: ours.work.accepted,
    errorPa: worst,
  },
];

const folder = mkdtempSync(join(tmpdir(), 'vapour-bench-'));
try {
  // CVODE in C
  const binary = join(folder, 'vapour_network');
  const libraries = ['-lsundials_cvode', '-lsundials_nvecserial', '-lm'];
  const compiled = spawnSync('cc', [
    '-O2',
    '-march=native',
    '-o',
    binary,
    tool('cvode/vapour_network.c'),
    ...libraries,
  ]);
  if (compiled.status !== 0) {
    console.log('CVODE left out: needs a C compiler and libsundials-dev (apt-get install gcc libsundials-dev)');
  } else {
    const equations = new NetworkEquations(scenario.network);
    const inputs = inputVector();
    new Outside(scenario.conditions, 0).valuesAt(0, true, inputs);
    equations.inputs.setStretch(0, 1, inputs, inputs);
    const x0 = initialState(equations, scenario.conditions.start);
    equations.gas.read(x0, equations.inputs);
    const tolerances = absoluteTolerances(equations, x0, TOLERANCE);
    const { timeS } = reference.recording;
    const gauge = reference.traces[0]!.value;
    const problem = join(folder, 'problem.txt');
    writeFileSync(
      problem,
      cvodeProblem(scenario, reference, equations, x0, tolerances, 'tank', timeS.subarray(1), gauge.subarray(1)),
    );
    const run = spawnSync(binary, [problem, String(TOLERANCE), '200'], { encoding: 'utf8' });
    if (run.status === 0) rows.push(JSON.parse(run.stdout) as Row);
    else console.log(`CVODE failed: ${run.stderr}`);
  }
  // scipy
  const python = spawnSync('python3', ['-c', 'import scipy']);
  if (python.status !== 0) console.log('scipy left out: needs python3-scipy (apt-get install python3-scipy)');
  else {
    const file = join(folder, 'scenario.json');
    writeFileSync(file, JSON.stringify(scenario));
    const referenceFile = join(folder, 'reference.json');
    writeFileSync(
      referenceFile,
      JSON.stringify({
        timesS: Array.from(reference.recording.timeS),
        gaugePa: Array.from(reference.traces[0]!.value),
      }),
    );
    const run = spawnSync(
      'python3',
      [tool('independent_integrator.py'), 'time', file, String(TOLERANCE), referenceFile],
      { encoding: 'utf8' },
    );
    if (run.status === 0) for (const line of run.stdout.trim().split('\n')) rows.push(JSON.parse(line) as Row);
    else console.log(`scipy failed: ${run.stderr}`);
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}

console.log(`\none vacuum draw of ${rows[0]!.simulatedS} s, rtol ${TOLERANCE}, 10 samples a second`);
console.log('method            ms         times this project   evaluations   largest error Pa');
for (const r of rows) {
  const ratio = r.seconds / rows[0]!.seconds;
  const figures = [(1e3 * r.seconds).toFixed(3).padStart(10), ratio.toFixed(2).padStart(15)];
  const error = r.errorPa === undefined ? '' : r.errorPa.toFixed(3).padStart(16);
  console.log(`${r.method.padEnd(14)}${figures.join('')}${String(r.evaluations).padStart(19)}${error}`);
}
console.log(JSON.stringify({ bench: 'simulation speed', tolerance: TOLERANCE, layouts, methods: rows }));
