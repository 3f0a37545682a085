/** What every cause leaves free in a sealed tank's run. */
import type { Car } from '../../system/car.ts';
import type { Conditions } from '../priors/conditions.ts';
import { holePrior as hole, type LogPrior } from '../priors/nuisances.ts';
import type { Prior } from '../single-run/prior.ts';
import type { SealedDrive } from './drive.ts';
import { S, SEALED_QUANTITIES } from './quantities.ts';

/** Sound holes and passages: judgement and common practice, no source; a tank that holds for days is tighter than others. */
const TANK_HOLE = hole(0.03, 0.8);
const SIDE_HOLE = hole(0.06, 0.7);
/** A sound tank lets go within 5 to 20 s (common practice, no source), which is a factor of two in diameter at most. */
const ISOLATION_OPEN = hole(5, 0.28);
const ISOLATION_SHUT = hole(0.03, 0.8);
const VENT_OPEN = hole(7, 0.35);
const PURGE: LogPrior = { centre: 4.5e-6, sd: 0.5 };
const SEEP = hole(0.03, 0.8);
/** What tank walls and hoses give to pressure counts as volume, and is not known [ln]; judgement. */
const GIVE_SD = 0.08;
/** Carbon holds air and vapour and gives them back within minutes: gas counted as a multiple of the free volume; more of it slowly. Judgement. */
const CANISTER_MULTIPLE: LogPrior = { centre: 2, sd: 0.5 };
const SLOW_VOLUME: LogPrior = { centre: 5e-4, sd: 1 };
const SLOW_TIME: LogPrior = { centre: 30, sd: 0.8 };
/** Evaporation conductance [m3/s]: still diffusion over 0.1 m gives 2.5e-5, free convection ten times that. */
const EVAPORATION: LogPrior = { centre: 5e-5, sd: 0.9 };
/**
 * Vapour missing from saturation at the start [Pa], judgement: a sealed tank had hours, many times the ten minutes that
 * evaporation takes, to come near it. A wider prior would take a sound tank's standing still for the mark of a leak.
 */
const DEFICIT_SD_PA = 200;
/** Gas to wall, free convection, 4 W/(m2 K) on 1.3 times a cube's surface (Incropera, ch. 9; judgement). */
const WALL_HEAT_PER_M2: LogPrior = { centre: 4, sd: 0.5 };
/** Fuel and wall beyond what was recorded [K]: a tenth of a kelvin over the run where the fuel was, else more. Judgement. */
const WARM_RECORDED_K = 0.1;
const WARM_UNKNOWN_K = 0.3;
const WARM_LEAST_SPAN_S = 300;
/** Share of the ambient's swing that fuel and wall follow within some hours; the wall follows a recorded fuel closely. Judgement. */
const FOLLOW = { centre: 0.6, sd: 0.25 };
/** Some pascals at 1 L/min: a bed of 2 mm pellets by Ergun's equation, judgement on its size and on the ports. */
const BED: LogPrior = { centre: 2e5, sd: 0.8 };
/** Nearly all vapour stays in a working bed; on a hot day it holds less and gives some back. Judgement. */
const PAST: LogPrior = { centre: 0.08, sd: 1 };
const HEAD_VOLUME: LogPrior = { centre: 5e-4, sd: 0.5 };
const HEAD_VAPOUR_LOGIT = { centre: -1, sd: 1.5 };
/** Sensors: zero error [Pa], gain [-]; the wide-range tank sensor has the wider zero. Judgement. */
const TANK_OFFSET_LIMIT_PA = 150;
const OFFSET_LIMIT_PA = 60;
const GAIN_LIMIT = 0.02;
/** The first reading is what the pressure at the first sample makes the sensor show, but for noise and some seconds [Pa]. */
const INITIAL_SD_PA = 150;

/** Lag of pressure sensors [s], judgement. */
const LAG_S = 0.2;

/** Quantities that no prior sets: valves that move and sensors that follow. */
export function sealedBase(): Float64Array {
  const q = new Float64Array(SEALED_QUANTITIES);
  q[S.lag] = LAG_S;
  q[S.canisterLag] = LAG_S;
  q[S.woken] = 1;
  q[S.gain] = 1;
  q[S.canisterGain] = 1;
  return q;
}

export function sealedPriors(car: Car, c: Conditions, drive: SealedDrive, firstReadingPa: number): Prior[] {
  const log = (name: string, slot: number, prior: LogPrior): Prior => ({ name, slot, kind: 'log', ...prior });
  const linear = (name: string, slot: number, centre: number, sd: number): Prior => ({
    name,
    slot,
    kind: 'linear',
    centre,
    sd,
  });
  const offsetSd = (car.pressureSensor?.offsetTolerancePa ?? TANK_OFFSET_LIMIT_PA) / 2;
  const gainSd = (car.pressureSensor?.gainTolerance ?? GAIN_LIMIT) / 2;
  const wallM2 = 1.3 * 6 * c.gasVolumeM3 ** (2 / 3);
  const spanS = drive.steps.dtS.reduce((s, x) => s + x, 0);
  const warmK = drive.fuelSwingK ? WARM_RECORDED_K : WARM_UNKNOWN_K;
  const two = drive.seesTank.length > 1;
  return [
    log('tankHole', S.tankHole, TANK_HOLE),
    log('sideHole', S.sideHole, SIDE_HOLE),
    log('isolationOpen', S.isolationOpenArea, ISOLATION_OPEN),
    log('isolationShut', S.isolationShutArea, ISOLATION_SHUT),
    log('ventOpen', S.ventOpenArea, VENT_OPEN),
    log('purge', S.purgeArea, PURGE),
    log('seep', S.seepArea, SEEP),
    log('volume', S.tankVolume, { centre: c.gasVolumeM3, sd: Math.hypot(c.gasVolumeSdLn, GIVE_SD) }),
    log('canister', S.canisterVolume, {
      centre: CANISTER_MULTIPLE.centre * c.canisterVolumeM3,
      sd: CANISTER_MULTIPLE.sd,
    }),
    log('slowVolume', S.slowVolume, SLOW_VOLUME),
    log('slowTime', S.slowTime, SLOW_TIME),
    log('vapourPressure', S.vapourPressure, { centre: c.vapourPressurePa, sd: c.vapourPressureSdLn }),
    linear('deficit', S.deficit, 0, DEFICIT_SD_PA),
    log('evaporation', S.evaporation, EVAPORATION),
    log('wallHeat', S.wallHeat, { centre: WALL_HEAT_PER_M2.centre * wallM2, sd: WALL_HEAT_PER_M2.sd }),
    linear('warm', S.warm, 0, warmK / Math.max(WARM_LEAST_SPAN_S, spanS)),
    linear('follow', S.follow, FOLLOW.centre, FOLLOW.sd),
    log('past', S.past, PAST),
    log('bed', S.bed, BED),
    log('head', S.headVolume, HEAD_VOLUME),
    linear('headVapour', S.headVapour, HEAD_VAPOUR_LOGIT.centre, HEAD_VAPOUR_LOGIT.sd),
    linear('initial', S.initialReading, firstReadingPa, INITIAL_SD_PA),
    linear('offset', S.offset, 0, offsetSd),
    linear('gain', S.gain, 1, gainSd),
    ...(two
      ? [
          linear('canisterOffset', S.canisterOffset, 0, OFFSET_LIMIT_PA / 2),
          linear('canisterGain', S.canisterGain, 1, GAIN_LIMIT / 2),
        ]
      : []),
  ];
}
