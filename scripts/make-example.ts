/**
 * Makes the recording of the shipped example from its scenario, as a workshop's logger would keep it: fewer digits,
 * some samples lost, no fuel temperature. The car, its fault and the recording are invented.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { scenarioFromFile, scenarioSchema } from '../src/cli/scenario-file.ts';
import { writeRecordingCsv } from '../src/recording/write-csv.ts';
import { randomStream } from '../src/simulation/random.ts';
import { simulate } from '../src/simulation/simulate.ts';

const at = (name: string): string => fileURLToPath(new URL(`../examples/${name}`, import.meta.url));
const scenario = scenarioSchema.parse(JSON.parse(readFileSync(at('small-leak.scenario.json'), 'utf8')));
const { recording } = simulate(scenarioFromFile(scenario));

/** Share of the samples that the logger loses, and a seed of its own. */
const LOST_SHARE = 0.01;
const LOGGER = randomStream(2026);

const { fuelTemperatureK: _, ...channels } = recording.channels;
const [header, ...rows] = writeRecordingCsv({ ...recording, channels })
  .trimEnd()
  .split('\r\n');
const kept = rows
  .filter(() => LOGGER.uniform() >= LOST_SHARE)
  .map((row) =>
    row
      .split(',')
      .map((cell) => (cell === '' ? '' : String(Number(Number(cell).toFixed(2)))))
      .join(','),
  );
writeFileSync(at('leak-self-test.csv'), `${[header, ...kept].join('\r\n')}\r\n`);
console.log(`Written: examples/leak-self-test.csv (${kept.length} samples)`);
