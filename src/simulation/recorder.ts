import { SPECIFIC_GAS_CONSTANT_AIR } from '../physics/constants.ts';
import { engineAirFlow, purgeTrim } from '../physics/fuel-trim.ts';
import { clip, quantise } from '../physics/sensor.ts';
import type { ChannelName } from '../recording/recording.ts';
import type { Network, PressureSensor } from '../system/network.ts';
import { COMMAND_INDEX } from './commands.ts';
import { seriesAt } from './inputs.ts';
import { type RandomStream, randomStream } from './random.ts';
import type { Run, StepObserver } from './run-procedure.ts';
import type { Scenario } from './scenario.ts';
import { type TraceReader, traceReader } from './trace.ts';
import { clipHigh, clipLow } from './watch.ts';

const SENSOR_CHANNEL: Readonly<Record<PressureSensor['id'], ChannelName>> = {
  tankPressure: 'tankPressureGaugePa',
  canisterPressure: 'canisterPressureGaugePa',
  pumpPressure: 'pumpPressureGaugePa',
};

/** Share of the displacement that an engine fills. Source: judgement, part load. */
const VOLUMETRIC_EFFICIENCY = 0.8;

/** Volumetric gauges read to this share of a tank. Source: a byte over 100 %, as diagnostic messages carry it. */
const LEVEL_STEP = 1 / 255;

/** Takes samples of what the module would see, and of traced quantities, along a run. */
export class Recorder implements StepObserver {
  readonly timeS: number[] = [];
  readonly channels = new Map<ChannelName, number[]>();
  readonly traces: { name: string; value: number[] }[];

  private readonly scenario: Scenario;
  private readonly readers: TraceReader[] = [];
  private readonly traceNames: readonly string[];
  private readonly pressureNoise: RandomStream[];
  private readonly jitter: RandomStream;
  private readonly slosh: RandomStream;
  private readonly trimNoise: RandomStream;
  private readonly sampleIndex = { next: 0, timeS: 0 };
  private state: Float64Array | undefined;
  private sloshPa = 0;
  private trim = 0;
  private lastS: number | undefined;

  constructor(scenario: Scenario, traceNames: readonly string[]) {
    this.scenario = scenario;
    this.traceNames = traceNames;
    this.traces = traceNames.map((name) => ({ name, value: [] }));
    const { seed } = scenario.sampling;
    this.jitter = randomStream(seed, 1);
    this.slosh = randomStream(seed, 2);
    this.trimNoise = randomStream(seed, 3);
    this.pressureNoise = scenario.network.sensors.map((_, k) => randomStream(seed, 10 + k));
  }

  /** Takes the samples that fall into the step. */
  afterStep(run: Run, _fromS: number, toS: number): void {
    this.state ??= new Float64Array(run.equations.size);
    if (this.readers.length < this.traceNames.length) {
      for (const name of this.traceNames) this.readers.push(traceReader(run.equations, name));
    }
    while (this.sampleIndex.timeS <= toS) {
      run.integrator.interpolate(this.sampleIndex.timeS, this.state);
      this.take(run, this.sampleIndex.timeS, this.state);
      const { rateHz, jitter } = this.scenario.sampling;
      this.sampleIndex.next++;
      const shift = jitter > 0 ? clip(jitter * this.jitter.normal(), -0.45, 0.45) : 0;
      this.sampleIndex.timeS = (this.sampleIndex.next + shift) / rateHz;
    }
  }

  private push(channel: ChannelName, value: number): void {
    let values = this.channels.get(channel);
    if (values === undefined) {
      values = [];
      this.channels.set(channel, values);
    }
    values.push(value);
  }

  private take(run: Run, timeS: number, x: Float64Array): void {
    const { scenario } = this;
    const { network, conditions, sampling } = scenario;
    const { equations, readings } = run;
    const commands = equations.commands;
    const elapsed = this.lastS === undefined ? 0 : timeS - this.lastS;
    this.lastS = timeS;
    this.timeS.push(timeS);
    if (sampling.slosh !== undefined) {
      const keep = Math.exp(-elapsed / sampling.slosh.correlationS);
      this.sloshPa = keep * this.sloshPa + Math.sqrt(1 - keep * keep) * sampling.slosh.pressurePa * this.slosh.normal();
    }
    network.sensors.forEach((sensor, k) => {
      this.push(SENSOR_CHANNEL[sensor.id], this.pressure(sensor, k, readings.at(k, x)));
    });
    this.push('purgeDuty', commands[COMMAND_INDEX.purgeDuty]!);
    if (network.layout === 'pump-reference') {
      this.push('pumpOn', commands[COMMAND_INDEX.pumpOn]!);
      this.push('changeoverToTank', commands[COMMAND_INDEX.changeoverToTank]!);
    } else this.push('ventClosed', commands[COMMAND_INDEX.ventClosed]!);
    if (network.layout === 'sealed-tank') this.push('isolationOpen', commands[COMMAND_INDEX.isolationOpen]!);
    const { levelGain, levelOffset, fuelTemperatureOffsetK, ambientTemperatureOffsetK } = network.readings;
    this.push('fuelLevel', quantise(clip(levelGain * this.level(network, x, run) + levelOffset, 0, 1), LEVEL_STEP));
    this.push('ambientTemperatureK', seriesAt(conditions.ambientTemperatureK, timeS) + ambientTemperatureOffsetK);
    const tank = equations.layout.nodeIndex.get(network.fillSpace)!;
    this.push('fuelTemperatureK', x[equations.layout.base[tank]! + 4]! + fuelTemperatureOffsetK);
    const ambient = seriesAt(conditions.ambientAbsPa, timeS);
    this.push('barometricPa', ambient);
    const running = run.step.engineRunning && conditions.manifoldAbsPa !== undefined;
    const manifold = running ? seriesAt(conditions.manifoldAbsPa!, timeS) : ambient;
    this.push('manifoldAbsPa', manifold);
    if (conditions.vehicleSpeedMPerS !== undefined) {
      this.push('vehicleSpeedMPerS', seriesAt(conditions.vehicleSpeedMPerS, timeS));
    }
    if (conditions.fillFlowM3PerS !== undefined) {
      this.push('fillFlowM3PerS', commands[COMMAND_INDEX.nozzleOn]! * seriesAt(conditions.fillFlowM3PerS, timeS));
    }
    if (this.readers.length > 0 || conditions.engine !== undefined) equations.observe(timeS, x);
    if (conditions.engine !== undefined) this.takeEngine(run, timeS, elapsed, running, manifold);
    this.readers.forEach((reader, k) => {
      this.traces[k]!.value.push(reader(x));
    });
  }

  private pressure(sensor: PressureSensor, k: number, reading: number): number {
    const { sampling } = this.scenario;
    const noise = Math.hypot(sensor.noisePa, sampling.noisePa) * this.pressureNoise[k]!.normal();
    const stuck = sensor.stuckFromS !== undefined && (this.lastS ?? 0) >= sensor.stuckFromS;
    const disturbed = stuck ? reading : reading + noise + sensor.gain * this.sloshPa;
    return quantise(clip(disturbed, clipLow(sensor), clipHigh(sensor)), sampling.pressureStepPa);
  }

  /** Fuel of all lobes over the volume of all lobes. */
  private level(network: Network, x: Float64Array, run: Run): number {
    let fuel = 0;
    let room = 0;
    network.spaces.forEach((space, i) => {
      if (space.kind !== 'tank') return;
      fuel += run.equations.fuel.fillFraction(i, x) * space.shellVolumeM3;
      room += space.shellVolumeM3;
    });
    return fuel / room;
  }

  private takeEngine(run: Run, timeS: number, elapsed: number, running: boolean, manifold: number): void {
    const { conditions } = this.scenario;
    const engine = conditions.engine!;
    const speed = running ? seriesAt(engine.speedRpm, timeS) : 0;
    this.push('engineSpeedRpm', speed);
    const { flows, gas, layout } = run.equations;
    let vapour = 0;
    let air = 0;
    for (let k = 0; k < flows.count; k++) {
      if (flows.to[k]! <= layout.spaceCount) continue; // not to manifold or ejector
      const w = flows.flow[k]! >= 0 ? gas.massFraction[flows.from[k]!]! : 0;
      vapour += flows.flow[k]! * w;
      air += flows.flow[k]! * (1 - w);
    }
    const rt = SPECIFIC_GAS_CONSTANT_AIR * seriesAt(conditions.ambientTemperatureK, timeS);
    const airFlow = engineAirFlow(manifold, speed, engine.displacementM3, VOLUMETRIC_EFFICIENCY, rt);
    const wanted = running ? clip(purgeTrim(vapour, air, airFlow), -engine.trimLimit, engine.trimLimit) : 0;
    this.trim += (wanted - this.trim) * (elapsed > 0 ? 1 - Math.exp(-elapsed / engine.trimLagS) : 1);
    this.push('shortTrim', running ? this.trim + engine.trimNoise * this.trimNoise.normal() : 0);
    this.push('longTrim', 0);
  }
}
