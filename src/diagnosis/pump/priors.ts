/** What every cause leaves free in a pump run. */
import type { Car } from '../../system/car.ts';
import type { Conditions } from '../priors/conditions.ts';
import { holePrior as hole, type LogPrior } from '../priors/nuisances.ts';
import type { Prior } from '../single-run/prior.ts';
import { P, PUMP_QUANTITIES } from './quantities.ts';

/** Sound holes and passages, as in the vacuum draw: judgement and common practice, no source. */
const LEAK = hole(0.06, 0.7);
/** What a part that is tight still passes, as an equivalent diameter [mm], judgement. */
export const TIGHT_MM = 0.02;
const VENT_OPEN = hole(7, 0.35);
const PURGE: LogPrior = { centre: 4.5e-6, sd: 0.5 };
/** Reference orifice 0.5 mm (0.020 in); drilled to 1 to 2 %. From memory. */
const ORIFICE = hole(0.503, 0.012);
/**
 * A tight tank ends at 2.5 to 4 kPa and the orifice holds the pump at 1 to 4 kPa, mostly near 2 (common practice, no
 * source): stall pressure and, through the orifice law, free flow.
 */
const STALL: LogPrior = { centre: 3600, sd: 0.2 };
const FREE_FLOW: LogPrior = { centre: 1.5e-5, sd: 0.3 };
/** The characteristic is nearly a straight line, and a sound pump keeps it over a run. Judgement. */
const BEND_SD = 0.1;
const DRIFT_SD = 0.015;
/** How many times its free volume the canister counts as gas. The carbon has minutes to give air and vapour back, more than in a vacuum draw. */
const CANISTER_MULTIPLE: LogPrior = { centre: 2, sd: 0.45 };
/** Evaporation conductance [m3/s]: still diffusion over 0.1 m gives 2.5e-5, free convection ten times that. */
const EVAPORATION: LogPrior = { centre: 5e-5, sd: 0.8 };
/** Vapour missing from saturation after hours of rest [Pa], judgement. */
const DEFICIT_SD_PA = 600;
/** Gas to wall, free convection, 4 W/(m2 K) on 1.3 times a cube's surface (Incropera, ch. 9; judgement). */
const WALL_HEAT_PER_M2: LogPrior = { centre: 4, sd: 0.5 };
/** Parked, after hours of rest: below 0.3 K over ten minutes, judgement. */
const WARM_SD = 0.0003;
/** Nearly all vapour from the tank stays in a working bed; what its vent end holds gives a few percent back. Judgement. */
const PAST: LogPrior = { centre: 0.03, sd: 1 };
/** Vapour line and canister head: some decilitres; after hours of rest anything from clean to the tank's vapour. Judgement. */
const HEAD_VOLUME: LogPrior = { centre: 5e-4, sd: 0.5 };
const HEAD_VAPOUR_LOGIT = { centre: -1, sd: 1.5 };
const SLIP: LogPrior = { centre: 0.015, sd: 0.8 };
/** 10 Pa at 1 L/min: a bed of 2 mm pellets by Ergun's equation (judgement on its size) and a 5 mm valve. */
const BED: LogPrior = { centre: 6e5, sd: 0.7 };
/** Sensors: zero error [Pa], gain [-], where the car file gives no limits, judgement. */
const OFFSET_LIMIT_PA = 60;
const GAIN_LIMIT = 0.02;

/** Lag of pressure sensors [s], judgement; the moment of a command is known no better. */
const LAG_S = 0.2;

/** Quantities that no prior sets: a valve that turns, a pump at full strength, tight ends, a free way to the canister. */
export function pumpBase(): Float64Array {
  const q = new Float64Array(PUMP_QUANTITIES);
  q[P.strength] = 1;
  q[P.purgeEndArea] = hole(TIGHT_MM, 0).centre;
  q[P.ventEndArea] = hole(TIGHT_MM, 0).centre;
  q[P.lag] = LAG_S;
  q[P.tankLag] = LAG_S;
  q[P.clearing] = 1;
  return q;
}

export function pumpPriors(car: Car, c: Conditions): Prior[] {
  const log = (name: string, slot: number, prior: LogPrior): Prior => ({ name, slot, kind: 'log', ...prior });
  const linear = (name: string, slot: number, centre: number, sd: number): Prior => ({
    name,
    slot,
    kind: 'linear',
    centre,
    sd,
  });
  const offsetSd = (car.pressureSensor?.offsetTolerancePa ?? OFFSET_LIMIT_PA) / 2;
  const gainSd = (car.pressureSensor?.gainTolerance ?? GAIN_LIMIT) / 2;
  const wallM2 = 1.3 * 6 * c.gasVolumeM3 ** (2 / 3);
  return [
    log('leak', P.leakArea, LEAK),
    log('purge', P.purgeArea, PURGE),
    log('ventOpen', P.ventOpenArea, VENT_OPEN),
    log('orifice', P.orificeArea, ORIFICE),
    log('freeFlow', P.freeFlow, FREE_FLOW),
    log('stall', P.stall, STALL),
    linear('bend', P.bend, 0, BEND_SD),
    linear('drift', P.drift, 0, DRIFT_SD),
    log('volume', P.tankVolume, { centre: c.gasVolumeM3, sd: c.gasVolumeSdLn }),
    log('canister', P.canisterVolume, {
      centre: CANISTER_MULTIPLE.centre * c.canisterVolumeM3,
      sd: CANISTER_MULTIPLE.sd,
    }),
    log('vapourPressure', P.vapourPressure, { centre: c.vapourPressurePa, sd: c.vapourPressureSdLn }),
    linear('deficit', P.deficit, 0, DEFICIT_SD_PA),
    log('evaporation', P.evaporation, EVAPORATION),
    log('wallHeat', P.wallHeat, { centre: WALL_HEAT_PER_M2.centre * wallM2, sd: WALL_HEAT_PER_M2.sd }),
    linear('warm', P.warm, 0, WARM_SD),
    log('past', P.past, PAST),
    log('head', P.headVolume, HEAD_VOLUME),
    linear('headVapour', P.headVapour, HEAD_VAPOUR_LOGIT.centre, HEAD_VAPOUR_LOGIT.sd),
    log('slip', P.slip, SLIP),
    log('bed', P.bed, BED),
    linear('offset', P.offset, 0, offsetSd),
    linear('gain', P.gain, 1, gainSd),
    linear('tankOffset', P.tankOffset, 0, offsetSd),
    linear('tankGain', P.tankGain, 1, gainSd),
  ];
}
