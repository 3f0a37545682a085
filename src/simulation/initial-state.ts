import { AUTOMOTIVE_CARBON, langmuirAffinity, langmuirPressure } from '../physics/carbon.ts';
import { HEAT_CAPACITY_CV_AIR, SPECIFIC_GAS_CONSTANT_AIR } from '../physics/constants.ts';
import { antoineCoefficients, antoineVapourPressure } from '../physics/fuel-vapour.ts';
import type { TankSpace } from '../system/network.ts';
import { INPUT_INDEX } from './inputs.ts';
import type { NetworkEquations } from './network-equations.ts';

/** What the car is like when a scenario starts. */
export interface StartConditions {
  readonly fuelTemperatureK: number;
  /** Partial pressure of vapour in the tank less its saturation, Pa, negative; absent = saturated. */
  readonly vapourDeficitPa?: number;
  /** Gauge pressure of a tank that was sealed before; absent = 0. */
  readonly tankGaugePa?: number;
  /** Vapour mole fraction at the canister's head and in the vapour line as a share of the tank's; absent = none. */
  readonly lineShare?: number;
}

/** Most of the gas in a bed that can be vapour at the start [-]. Source: judgement; a saturated bed boils off the rest. */
const VAPOUR_SHARE_MOST = 0.9;

/**
 * State at the start: gas at ambient pressure (or the tank at its own), tanks near saturation, beds in equilibrium
 * with their loading, ledger empty. Inputs and commands of `equations` must be set before.
 *
 * @param equations equations with inputs and commands set
 * @param start what the car is like
 * @returns state vector, in the order of the state layout
 */
export function initialState(equations: NetworkEquations, start: StartConditions): Float64Array {
  const { network, layout, gas, inputs } = equations;
  const x = new Float64Array(layout.size);
  const ambientPa = inputs.value[INPUT_INDEX.ambientAbsPa]!;
  const ambientK = inputs.value[INPUT_INDEX.ambientTemperatureK]!;
  const first = network.spaces.find((s): s is TankSpace => s.kind === 'tank')!;
  const saturation = (tank: TankSpace) => {
    const { a, bRankine } = antoineCoefficients(tank.fuel.reidVapourPressurePa);
    return tank.fuel.vapourPressureFactor * antoineVapourPressure(a, bRankine, start.fuelTemperatureK);
  };
  const tankPa = ambientPa + (start.tankGaugePa ?? 0);
  const tankVapour = (tank: TankSpace) =>
    Math.min(0.98 * tankPa, Math.max(0, saturation(tank) + (start.vapourDeficitPa ?? 0)));
  const fill = (b: number, volume: number, temperature: number, totalPa: number, vapourPa: number) => {
    x[b] = ((totalPa - vapourPa) * volume) / (SPECIFIC_GAS_CONSTANT_AIR * temperature);
    x[b + 1] = (vapourPa * volume) / (gas.vapourGasConstant * temperature);
  };
  network.spaces.forEach((space, i) => {
    const b = layout.base[i]!;
    if (space.kind === 'tank') {
      const fuelVolume = space.fillFraction * space.shellVolumeM3;
      x[b + 3] = fuelVolume * space.fuel.densityKgPerM3;
      x[b + 4] = start.fuelTemperatureK;
      const wall = space.gasToWallWPerK;
      const surface = space.gasToFuelWPerK;
      const gasK =
        wall + surface > 0 ? (wall * ambientK + surface * start.fuelTemperatureK) / (wall + surface) : ambientK;
      fill(b, space.shellVolumeM3 + space.neckVolumeM3 - fuelVolume, gasK, tankPa, tankVapour(space));
      x[b + 2] = (x[b]! * HEAT_CAPACITY_CV_AIR + x[b + 1]! * gas.vapourCv) * gasK;
    } else if (space.kind === 'bed') {
      const carbon = AUTOMOTIVE_CARBON;
      const uptake = Math.min(0.999, space.loadingFraction) * carbon.saturationKgPerKg;
      const equilibrium = langmuirPressure(carbon.saturationKgPerKg, langmuirAffinity(carbon, ambientK), uptake);
      x[b + 2] = uptake * space.carbonKg;
      x[b + 3] = ambientK;
      fill(
        b,
        space.volumeM3,
        ambientK,
        ambientPa,
        space.carbonKg > 0 ? Math.min(VAPOUR_SHARE_MOST * ambientPa, equilibrium) : 0,
      );
    } else {
      const share = space.id === 'vapourLine' || space.id === 'head' ? (start.lineShare ?? 0) : 0;
      fill(b, space.volumeM3, ambientK, ambientPa, (share * tankVapour(first) * ambientPa) / tankPa);
    }
  });
  return x;
}
