import { engineOff } from '../simulation/procedures/engine-off.ts';
import { CLEAN_SAMPLING, type Conditions } from '../simulation/scenario.ts';
import { simulate } from '../simulation/simulate.ts';
import { assembleCar } from '../system/assemble.ts';
import type { Car } from '../system/car.ts';
import { type EngineOffSituation, SEALED_S } from './situation-after.ts';

/** What an engine-off test would show of one hole. */
export interface EngineOffPeak {
  readonly holeM: number;
  readonly highestGaugePa: number;
  readonly lowestGaugePa: number;
}

export interface EngineOffOutlook {
  readonly conclusive: boolean;
  /** `hole-passes`: the vapour makes up for the hole; `too-little`: too little heat or swing for this vapour volume. */
  readonly because: 'told-apart' | 'hole-passes' | 'too-little';
  /** By hole, none first. */
  readonly peaks: readonly EngineOffPeak[];
  /** Gauge pressures at which the car calls it tight, Pa. */
  readonly passHighGaugePa: number;
  readonly passLowGaugePa: number;
}

const PASS_HIGH_PA = 250; // common practice, no source: +1 inH2O
const PASS_LOW_PA = -250; // common practice, no source: -1 inH2O
const HOLES_M = [0, 0.254e-3, 0.508e-3, 1.016e-3] as const; // none, 0.010, 0.020 and 0.040 in
const DUTY_HOLE_M = 0.508e-3;
/** The sound car must pass the target by this factor, or a cloud decides (judgement). */
const MARGIN = 1.5;

/**
 * Whether an engine-off test can tell a tight car from one with a 0.5 mm (0.020 in) hole, for this swing of temperature
 * and this vapour volume: plays it on the simulator. The pressure that a hole leaves goes with one over the fourth power
 * of its diameter, so the answer depends on swing and volume more than on the car.
 */
export function engineOffOutlook(car: Car, situation: EngineOffSituation): EngineOffOutlook {
  const high = situation.passHighGaugePa ?? PASS_HIGH_PA;
  const low = situation.passLowGaugePa ?? PASS_LOW_PA;
  const peaks = HOLES_M.map((holeM) => playEngineOff(car, situation, holeM));
  const passes = (peak: EngineOffPeak, factor: number): boolean =>
    peak.highestGaugePa >= high * factor || peak.lowestGaugePa <= low * factor;
  const sound = peaks[0]!;
  const leaking = peaks.find(({ holeM }) => holeM === DUTY_HOLE_M)!;
  const because = !passes(sound, MARGIN) ? 'too-little' : passes(leaking, 1) ? 'hole-passes' : 'told-apart';
  return { conclusive: because === 'told-apart', because, peaks, passHighGaugePa: high, passLowGaugePa: low };
}

/** Highest and lowest pressure of a sealed engine-off hold with one hole. */
export function playEngineOff(car: Car, situation: EngineOffSituation, holeM: number): EngineOffPeak {
  const { ambientAbsPa, ambientFromK, ambientToK, fuelTemperatureK, heatW, fuelLevel } = situation;
  const far = 1e6;
  const procedure = engineOff({
    ventedS: 60,
    sealedS: 900,
    reventS: 60,
    sealedAgainS: SEALED_S - 1020,
    passHighGaugePa: far,
    passLowGaugePa: -far,
  });
  const conditions: Conditions = {
    ambientAbsPa,
    ambientTemperatureK: { timeS: [0, SEALED_S], value: [ambientFromK, ambientToK] },
    fuelHeatW: { timeS: [0, 600, 900], value: [heatW, heatW, 0] },
    start: { fuelTemperatureK },
  };
  const { recording } = simulate({
    label: 'engine-off outlook',
    network: assembleCar(car, holeM === 0 ? [] : [{ kind: 'leak', place: 'cap', size: holeM }], (p) => {
      p.tank.fillFraction = fuelLevel;
      p.sensor.noisePa = 0;
      p.sensor.minGaugePa = -50_000;
      p.sensor.maxGaugePa = 50_000;
    }),
    procedure,
    conditions,
    sampling: { ...CLEAN_SAMPLING, rateHz: 0.5 },
  });
  const pressure = recording.channels.tankPressureGaugePa!;
  let highestGaugePa = 0;
  let lowestGaugePa = 0;
  for (const value of pressure) {
    highestGaugePa = Math.max(highestGaugePa, value);
    lowestGaugePa = Math.min(lowestGaugePa, value);
  }
  return { holeM, highestGaugePa, lowestGaugePa };
}
