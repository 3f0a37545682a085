/** A demo recording as a workshop's logger would keep it: fewer digits, some samples lost, seldom a fuel temperature. */
import { writeRecordingCsv } from '../../recording/write-csv.ts';
import { randomStream } from '../../simulation/random.ts';
import { simulate } from '../../simulation/simulate.ts';
import { type DemoRecordingName, demoScenario } from './scenarios.ts';

/** Share of the samples that the logger loses. */
const LOST_SHARE = 0.01;
/** Stream of the logger, beside those of the simulation. */
const LOGGER_STREAM = 99;

/** Cars that tell their fuel temperature: pump modules and sealed tanks have a sensor for it, and the engine-off test. */
const TELLS_FUEL_TEMPERATURE: readonly DemoRecordingName[] = ['van-pump-run', 'hybrid-hold', 'saloon-engine-off'];

const rounded = (cell: string): string => (cell === '' ? '' : String(Number(Number(cell).toFixed(2))));

export function demoRecordingCsv(name: DemoRecordingName): string {
  const scenario = demoScenario(name);
  const { recording, failure } = simulate(scenario);
  if (failure !== undefined) throw new Error(`The demo recording ${name} cannot be simulated: ${failure.words}`);
  const { fuelTemperatureK, ...others } = recording.channels;
  const isTold = TELLS_FUEL_TEMPERATURE.includes(name) && fuelTemperatureK !== undefined;
  const channels = isTold ? { ...others, fuelTemperatureK } : others;
  const [header, ...rows] = writeRecordingCsv({ ...recording, channels })
    .trimEnd()
    .split('\r\n');
  const logger = randomStream(scenario.sampling.seed, LOGGER_STREAM);
  const kept = rows.filter(() => logger.uniform() >= LOST_SHARE).map((row) => row.split(',').map(rounded).join(','));
  return `${[header, ...kept].join('\r\n')}\r\n`;
}
