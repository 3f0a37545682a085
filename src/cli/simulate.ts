/** `simulate`: plays a scenario and writes its recording as CSV and its trace as SVG. */
import { basename } from 'node:path';
import { writeRecordingCsv } from '../recording/write-csv.ts';
import { changesOfCommands } from '../report/command-changes.ts';
import { simulatedFigure } from '../report/simulated-figure.ts';
import { drawingToSvgFile } from '../report/svg.ts';
import type { Simulation } from '../simulation/simulate.ts';
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { readJsonFile } from './json-file.ts';
import { printJson, printText } from './output.ts';
import { type ScenarioFile, scenarioSchema } from './scenario-file.ts';
import { runInThread } from './thread.ts';
import { refuseOverwritingInput, writeWhole } from './write-whole.ts';

export interface SimulateOptions {
  readonly out?: string;
  readonly json?: boolean;
}

const FIGURE_WIDTH = 760;

/** Mistakes in a scenario that its format cannot catch: a fault that the layout has not, a trace of nothing. */
async function play(file: string, scenario: ScenarioFile): Promise<Simulation> {
  try {
    return await runInThread('simulate', scenario);
  } catch (error) {
    throw new Failure(EXIT.input, `${file} cannot be played`, {
      file,
      found: error instanceof Error ? error.message : String(error),
      advice: 'Correct the scenario; its format is printed by: vaporwright schema scenario',
    });
  }
}

/** Traced quantities as a CSV of their own, beside the recording. */
function tracesCsv({ recording, traces }: Simulation): string {
  const lines = [['time_s', ...traces.map(({ name }) => name)].join(',')];
  recording.timeS.forEach((t, i) => {
    lines.push([t, ...traces.map(({ value }) => Number((value[i] ?? Number.NaN).toPrecision(9)))].join(','));
  });
  return `${lines.join('\r\n')}\r\n`;
}

function figureOf(label: string, simulation: Simulation): string {
  const { recording, phases } = simulation;
  const gaugePa = recording.channels.tankPressureGaugePa ?? recording.channels.pumpPressureGaugePa;
  if (gaugePa === undefined) throw new Failure(EXIT.input, 'the scenario’s car has no pressure sensor to draw');
  return drawingToSvgFile(
    simulatedFigure({
      label,
      timeS: recording.timeS,
      gaugePa,
      phases,
      commands: changesOfCommands(recording),
      width: FIGURE_WIDTH,
    }),
  );
}

export async function simulateCommand(file: string, options: SimulateOptions): Promise<void> {
  const scenario = readJsonFile(file, scenarioSchema, 'vaporwright-scenario-1').value;
  const base = options.out ?? basename(file).replace(/(\.scenario)?\.json$/, '');
  const files = { csv: `${base}.csv`, svg: `${base}.svg`, traces: `${base}.traces.csv` };
  refuseOverwritingInput(Object.values(files), [file]);
  const simulation = await play(file, scenario);
  const { failure, recording, steps } = simulation;
  if (failure !== undefined) {
    throw new Failure(EXIT.input, `the simulation stopped at ${failure.timeS.toFixed(2)} s: ${failure.words}`, {
      file,
      found: `${failure.quantity} (part: ${failure.part})`,
      advice: failure.tryThis,
    });
  }
  const hasTraces = simulation.traces.length > 0;
  writeWhole([
    { path: files.csv, content: writeRecordingCsv(recording) },
    { path: files.svg, content: figureOf(scenario.label, simulation) },
    ...(hasTraces ? [{ path: files.traces, content: tracesCsv(simulation) }] : []),
  ]);
  const written = [files.csv, files.svg, ...(hasTraces ? [files.traces] : [])];
  if (options.json === true) {
    printJson({
      schema: 'vaporwright-simulate-1',
      label: scenario.label,
      samples: recording.timeS.length,
      durationS: recording.timeS.at(-1) ?? 0,
      steps,
      airErrorKg: simulation.ledger.airErrorKg,
      fuelErrorKg: simulation.ledger.fuelErrorKg,
      files: written,
    });
    return;
  }
  const stepLines = steps.map(
    (step) =>
      `  ${step.phase.padEnd(10)} ${step.fromS.toFixed(1).padStart(8)} to ${step.toS.toFixed(1).padStart(8)} s${step.outcome === undefined ? '' : `  ${step.outcome}`}`,
  );
  printText(
    [scenario.label, '', 'Steps', ...stepLines, '', 'Written:', ...written.map((path) => `  ${path}`)].join('\n'),
  );
}
