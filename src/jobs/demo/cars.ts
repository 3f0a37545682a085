/** The invented cars of the demo shop: all six layouts, each with what a technician would know of it. */
import type { Car } from '../../system/car.ts';

const SENSOR = { minV: 0.5, maxV: 4.5, supplyV: 5, gainTolerance: 0.03, offsetTolerancePa: 60 } as const;
/** Range of a usual tank pressure sensor, about ±15 inH2O (from memory). */
const USUAL_SENSOR = { minGaugePa: -3700, maxGaugePa: 3700, ...SENSOR } as const;
/** Range of a sealed tank's sensor, about -15 to +40 kPa (from memory). */
const WIDE_SENSOR = { minGaugePa: -15_000, maxGaugePa: 40_000, ...SENSOR, offsetTolerancePa: 150 } as const;
/** Reid vapour pressures of the seasons: EN 228 classes, from memory. */
const SUMMER = { reidVapourPressurePa: { low: 50_000, high: 60_000 }, ethanolVolumeFraction: 0.1 };
const WINTER = { reidVapourPressurePa: { low: 60_000, high: 85_000 }, ethanolVolumeFraction: 0.05 };
const DRAW = { drawTargetGaugePa: -2000, drawTimeOutS: 60 };

const car = (label: string, rest: Omit<Car, 'schema' | 'label' | 'demo'>): Car => ({
  schema: 'vaporwright-car-1',
  label,
  demo: true,
  ...rest,
});

export const DEMO_CARS = {
  hatchback: car('Red hatchback, invented', {
    layout: 'engine-vacuum',
    onBoardRefuellingRecovery: true,
    filler: 'capped',
    tankVolumeM3: 0.05,
    fillerNeckVolumeM3: 0.0018,
    canisterFreeVolumeM3: 0.0025,
    pressureSensor: USUAL_SENSOR,
    fuel: SUMMER,
    monitor: DRAW,
  }),
  estate: car('Grey estate, turbo engine, invented', {
    layout: 'two-path-purge',
    onBoardRefuellingRecovery: true,
    filler: 'capless',
    tankVolumeM3: 0.058,
    fillerNeckVolumeM3: 0.002,
    canisterFreeVolumeM3: 0.0028,
    pressureSensor: USUAL_SENSOR,
    fuel: SUMMER,
    monitor: DRAW,
  }),
  offRoader: car('Green off-roader, saddle tank, invented', {
    layout: 'saddle-tank',
    onBoardRefuellingRecovery: true,
    filler: 'capped',
    tankVolumeM3: 0.085,
    fillerNeckVolumeM3: 0.0026,
    canisterFreeVolumeM3: 0.0034,
    pressureSensor: USUAL_SENSOR,
    fuel: WINTER,
    monitor: DRAW,
  }),
  pickup: car('White pick-up, invented', {
    layout: 'engine-vacuum',
    onBoardRefuellingRecovery: true,
    filler: 'capped',
    tankVolumeM3: 0.09,
    fillerNeckVolumeM3: 0.003,
    canisterFreeVolumeM3: 0.0036,
    pressureSensor: USUAL_SENSOR,
    fuel: SUMMER,
  }),
  coupe: car('Black coupé, invented', {
    layout: 'engine-vacuum',
    onBoardRefuellingRecovery: true,
    filler: 'capped',
    tankVolumeM3: 0.055,
    fillerNeckVolumeM3: 0.0019,
    canisterFreeVolumeM3: 0.0026,
    pressureSensor: USUAL_SENSOR,
    fuel: SUMMER,
    monitor: DRAW,
  }),
  van: car('Yellow van, pump module, invented', {
    layout: 'pump-reference',
    onBoardRefuellingRecovery: true,
    filler: 'capped',
    tankVolumeM3: 0.07,
    fillerNeckVolumeM3: 0.0022,
    canisterFreeVolumeM3: 0.003,
    fuel: WINTER,
  }),
  hybrid: car('Silver plug-in hybrid, sealed tank, invented', {
    layout: 'sealed-tank',
    onBoardRefuellingRecovery: true,
    filler: 'capped',
    tankVolumeM3: 0.04,
    fillerNeckVolumeM3: 0.0016,
    canisterFreeVolumeM3: 0.0024,
    pressureSensor: WIDE_SENSOR,
    fuel: SUMMER,
  }),
  saloon: car('Blue saloon, engine-off test, invented', {
    layout: 'engine-off',
    onBoardRefuellingRecovery: true,
    filler: 'capped',
    tankVolumeM3: 0.06,
    fillerNeckVolumeM3: 0.002,
    canisterFreeVolumeM3: 0.0027,
    pressureSensor: { ...USUAL_SENSOR, minGaugePa: -1900, maxGaugePa: 1900 },
    fuel: SUMMER,
  }),
  roadster: car('Old roadster, invented', {
    // What a technician knows before looking anything up: absent stays absent.
    layout: 'engine-vacuum',
    filler: 'capped',
    tankVolumeM3: 0.048,
  }),
} as const satisfies Readonly<Record<string, Car>>;
export type DemoCarName = keyof typeof DEMO_CARS;
