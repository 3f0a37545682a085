import { z } from 'zod';
import { CHANNELS, type ChannelName } from '../recording/recording.ts';
import type { LayoutId } from '../system/car.ts';

/**
 * When a car lets its evaporative monitor run. The cars' own service information has the true figures; what stands here are
 * typical ones, each with its mark, to be replaced by those of the car in hand.
 */
const CHANNEL_NAMES = Object.keys(CHANNELS) as [ChannelName, ...ChannelName[]];
const channel = z.enum(CHANNEL_NAMES);
const common = {
  id: z.string().min(1),
  mark: z.string().min(1).describe('Where the figure comes from'),
};

export const conditionSchema = z.discriminatedUnion('kind', [
  z.strictObject({
    ...common,
    kind: z.literal('at-start').describe('A channel within limits when the engine starts'),
    channel,
    low: z.number().exactOptional(),
    high: z.number().exactOptional(),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('cold-start').describe('Coolant above the air by no more than this when the engine starts'),
    air: z.enum(['intakeTemperatureK', 'ambientTemperatureK']),
    mostK: z.number().positive(),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('parked-before').describe('Engine off at least so long before the start'),
    leastS: z.number().positive(),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('throughout').describe('A channel within limits until the monitor is done'),
    channel,
    low: z.number().exactOptional(),
    high: z.number().exactOptional(),
    toleratedS: z.number().nonnegative().describe('Outside the limits for no longer than this, as slosh does'),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('time-in-range').describe('A channel within limits for so long in all, engine running'),
    channel,
    low: z.number().exactOptional(),
    high: z.number().exactOptional(),
    leastS: z.number().positive(),
    unbroken: z.boolean().describe('In one piece'),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('engine-runs').describe('Engine runs so long in one piece'),
    leastS: z.number().positive(),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('boost').describe('Manifold above the barometer for so long in one piece'),
    abovePa: z.number().nonnegative(),
    leastS: z.number().positive(),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('parked-after').describe('Key stays off so long after the drive'),
    leastS: z.number().positive(),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('while-parked').describe('A channel within limits while parked after the drive'),
    channel,
    low: z.number().exactOptional(),
    high: z.number().exactOptional(),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('no-refuelling').describe('No fuel added while parked after the drive'),
    mostRise: z.number().positive().describe('fraction of the tank'),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('swing').describe('Ambient temperature changes at least so much while parked'),
    leastK: z.number().positive(),
  }),
  z.strictObject({
    ...common,
    kind: z.literal('no-codes').describe('None of these codes stored or pending'),
    codes: z.array(z.string()).min(1),
  }),
]);
export type Condition = z.infer<typeof conditionSchema>;

export const conditionsSchema = z
  .strictObject({
    schema: z.literal('vaporwright-monitor-1').describe('Name and version of this format'),
    label: z.string().min(1).describe('Whose conditions these are'),
    conditions: z.array(conditionSchema),
  })
  .describe('When a car lets its evaporative monitor run');
export type MonitorConditions = z.infer<typeof conditionsSchema>;

const CELSIUS_K = 273.15;
const HOUR_S = 3600;
const TYPICAL = 'common practice, no source; the car’s own service information wins';

const COLDEST_K = 4.4 + CELSIUS_K; // 40 degF, from memory: denominator of 13 CCR 1968.2(d)(4.3.2)(D)
const WARMEST_K = 35 + CELSIUS_K; // 95 degF, same
const MOST_ABOVE_AIR_K = 7; // 12 degF = 6.67 K, and the items resolve 1 K; from memory, same
const LOW_LEVEL = 0.15; // from memory: general exceptions of 13 CCR 1968.2
const HIGH_LEVEL = 0.85; // 13 CCR 1968.2(e)(4.3.3), confirmed
const LOWEST_BAROMETER_PA = 72_000; // common practice, no source: 70 to 75 kPa
const SLOSH_S = 5; // judgement
const KMH = 1 / 3.6;

const level: Condition = {
  id: 'fuel level',
  kind: 'throughout',
  channel: 'fuelLevel',
  low: LOW_LEVEL,
  high: HIGH_LEVEL,
  toleratedS: SLOSH_S,
  mark: 'upper limit 13 CCR 1968.2(e)(4.3.3); lower from memory, general exceptions',
};
const altitude: Condition = {
  id: 'altitude',
  kind: 'throughout',
  channel: 'barometricPa',
  low: LOWEST_BAROMETER_PA,
  toleratedS: SLOSH_S,
  mark: TYPICAL,
};
const codes: Condition = {
  id: 'related codes',
  kind: 'no-codes',
  codes: [
    'P0443',
    'P0446',
    'P0447',
    'P0448',
    'P0449',
    'P0450',
    'P0451',
    'P0452',
    'P0453',
    'P0460',
    'P0461',
    'P0462',
    'P0463',
  ],
  mark: TYPICAL,
};
const startAir: Condition = {
  id: 'intake air at start',
  kind: 'at-start',
  channel: 'intakeTemperatureK',
  low: COLDEST_K,
  high: WARMEST_K,
  mark: `${TYPICAL}; 40 to 95 degF from memory`,
};
const startCoolant: Condition = {
  id: 'coolant at start',
  kind: 'at-start',
  channel: 'coolantTemperatureK',
  low: COLDEST_K,
  high: WARMEST_K,
  mark: `${TYPICAL}; 40 to 95 degF from memory`,
};
const coldStart: Condition = {
  id: 'cold start',
  kind: 'cold-start',
  air: 'intakeTemperatureK',
  mostK: MOST_ABOVE_AIR_K,
  mark: '12 degF, from memory: 13 CCR 1968.2(d)(4.3.2)(D)',
};
const parkedBefore: Condition = {
  id: 'parked before',
  kind: 'parked-before',
  leastS: 8 * HOUR_S,
  mark: 'one quoted example: off for 8 h or more; common practice',
};
const cruise: Condition = {
  id: 'cruise',
  kind: 'time-in-range',
  channel: 'vehicleSpeedMPerS',
  low: 64 * KMH,
  high: 121 * KMH,
  leastS: 600,
  unbroken: false,
  mark: 'common practice, no source: 40 to 75 mph, 10 to 20 minutes',
};
const idle: Condition = {
  id: 'idle',
  kind: 'time-in-range',
  channel: 'vehicleSpeedMPerS',
  high: 1.6 * KMH,
  leastS: 120,
  unbroken: true,
  mark: 'common practice, no source: 2 to 5 minutes',
};
const warmDrive = (leastS: number): Condition => ({ id: 'drive', kind: 'engine-runs', leastS, mark: TYPICAL });
const parkedAir: Condition = {
  id: 'ambient while parked',
  kind: 'while-parked',
  channel: 'ambientTemperatureK',
  low: COLDEST_K,
  high: WARMEST_K,
  mark: TYPICAL,
};
const noFilling: Condition = { id: 'no refuelling', kind: 'no-refuelling', mostRise: 0.05, mark: TYPICAL };
const parkedAfter = (leastS: number): Condition => ({ id: 'key off', kind: 'parked-after', leastS, mark: TYPICAL });

const DRAW: readonly Condition[] = [
  codes,
  startAir,
  startCoolant,
  coldStart,
  parkedBefore,
  level,
  altitude,
  cruise,
  idle,
];

/** Typical conditions of each layout, in the order in which a module looks at them. */
const BY_LAYOUT: Readonly<Record<LayoutId, readonly Condition[]>> = {
  'engine-vacuum': DRAW,
  'saddle-tank': DRAW,
  'engine-off': [codes, level, altitude, warmDrive(1200), parkedAir, noFilling, parkedAfter(45 * 60)],
  'pump-reference': [
    codes,
    { ...level, high: 0.9, mark: TYPICAL },
    { ...altitude, low: 75_600, mark: 'common practice, no source: below 2400 m' },
    warmDrive(600),
    parkedAir,
    noFilling,
    parkedAfter(5 * HOUR_S),
  ],
  'sealed-tank': [
    codes,
    level,
    parkedAir,
    noFilling,
    parkedAfter(8 * HOUR_S),
    { id: 'temperature swing', kind: 'swing', leastK: 5, mark: 'judgement: a sealed hold needs 5 K' },
  ],
  'two-path-purge': [
    codes,
    level,
    altitude,
    { id: 'warm engine', kind: 'engine-runs', leastS: 600, mark: TYPICAL },
    { id: 'boost', kind: 'boost', abovePa: 5000, leastS: 5, mark: 'common practice, no source: 5 to 10 s' },
  ],
};

/** Typical conditions of a layout; a car's own replace them. */
export const typicalConditions = (layout: LayoutId): MonitorConditions => ({
  schema: 'vaporwright-monitor-1',
  label: `typical of the layout "${layout}"`,
  conditions: [...BY_LAYOUT[layout]],
});
