/** A scenario of a file, played. */
import { type Simulation, simulate } from '../simulation/simulate.ts';
import { type ScenarioFile, scenarioFromFile } from './scenario-file.ts';

export const playScenario = (scenario: ScenarioFile): Simulation =>
  simulate(scenarioFromFile(scenario), scenario.trace === undefined ? {} : { trace: scenario.trace });
