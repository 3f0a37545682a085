/** A scenario as a file: a car, what is wrong with it, and the procedure it goes through. */
import { z } from 'zod';
import type { Procedure } from '../simulation/procedure.ts';
import { ENGINE_OFF, engineOff } from '../simulation/procedures/engine-off.ts';
import { overnightSoak } from '../simulation/procedures/overnight-soak.ts';
import { PUMP_RUN, pumpRun } from '../simulation/procedures/pump-run.ts';
import { boostDrive, PURGE_DRIVE, purgeDrive } from '../simulation/procedures/purge-drive.ts';
import { REFUELLING, refuelling } from '../simulation/procedures/refuelling.ts';
import { SEALED_HOLD, sealedHold } from '../simulation/procedures/sealed-hold.ts';
import { VACUUM_DRAW, vacuumDraw } from '../simulation/procedures/vacuum-draw.ts';
import type { Scenario } from '../simulation/scenario.ts';
import { assembleCar } from '../system/assemble.ts';
import { carSchema } from '../system/car.ts';
import { FAULT_KINDS } from '../system/faults/catalogue.ts';
import { LEAK_PLACES } from '../system/parameters.ts';

const series = z
  .union([z.number(), z.strictObject({ timeS: z.array(z.number()).min(1), value: z.array(z.number()).min(1) })])
  .describe('A constant, or straight lines between points');

/** Settings of a procedure: the ones not given keep their usual value. */
function settings(usual: object) {
  const fields = Object.entries(usual).map(([name, value]) => {
    const kind = typeof value === 'boolean' ? z.boolean() : z.number();
    return [name, kind.exactOptional().describe(`${value} when not given`)] as const;
  });
  return z.strictObject(Object.fromEntries(fields)).exactOptional();
}

/** Settings of the two that take their numbers in a row. Common practice, no source. */
const OVERNIGHT_SOAK = { hours: 12, sealed: false };
const BOOST_DRIVE = { lowLoadS: 30, boostS: 30, sealedS: 30, duty: 0.5 };

const soakFrom = (given: Partial<typeof OVERNIGHT_SOAK> = {}): Procedure => {
  const { hours, sealed } = { ...OVERNIGHT_SOAK, ...given };
  return overnightSoak(hours, sealed);
};
const boostFrom = (given: Partial<typeof BOOST_DRIVE> = {}): Procedure => {
  const { lowLoadS, boostS, sealedS, duty } = { ...BOOST_DRIVE, ...given };
  return boostDrive(lowLoadS, boostS, sealedS, duty);
};

const PROCEDURE_MAKERS = {
  'vacuum-draw': { usual: VACUUM_DRAW, make: vacuumDraw },
  'engine-off': { usual: ENGINE_OFF, make: engineOff },
  'purge-drive': { usual: PURGE_DRIVE, make: purgeDrive },
  'boost-drive': { usual: BOOST_DRIVE, make: boostFrom },
  'overnight-soak': { usual: OVERNIGHT_SOAK, make: soakFrom },
  refuelling: { usual: REFUELLING, make: refuelling },
  'pump-run': { usual: PUMP_RUN, make: pumpRun },
  'sealed-hold': { usual: SEALED_HOLD, make: sealedHold },
} as const;
type MakerName = keyof typeof PROCEDURE_MAKERS;

const procedure = z.union(
  (Object.keys(PROCEDURE_MAKERS) as MakerName[]).map((kind) =>
    z.strictObject({ kind: z.literal(kind), settings: settings(PROCEDURE_MAKERS[kind].usual) }),
  ),
);

const faultKind = z.enum(FAULT_KINDS.map(({ kind }) => kind) as [string, ...string[]]);

export const scenarioSchema = z
  .strictObject({
    schema: z.literal('vaporwright-scenario-1').describe('Name and version of this format'),
    label: z.string().min(1),
    car: carSchema,
    fuelLevel: z.number().min(0).max(1).describe('fraction of the tank'),
    faults: z
      .array(
        z.strictObject({
          kind: faultKind,
          place: z.enum(LEAK_PLACES).exactOptional(),
          size: z.number().exactOptional().describe('In the SI unit of the kind: m for a hole, Pa, s, K, or a share'),
        }),
      )
      .describe('What is wrong; none for a sound car'),
    procedure,
    conditions: z.strictObject({
      ambientAbsPa: series,
      ambientTemperatureK: series,
      fuelTemperatureK: z.number().positive(),
      manifoldAbsPa: series.exactOptional().describe('While the engine runs'),
      vehicleSpeedMPerS: series.exactOptional(),
      engine: z
        .strictObject({
          displacementM3: z.number().positive(),
          speedRpm: series,
          trimLagS: z.number().positive(),
          trimLimit: z.number().positive(),
          trimNoise: z.number().nonnegative(),
        })
        .exactOptional()
        .describe('For engine speed and fuel trim in the recording'),
      fillFlowM3PerS: series.exactOptional().describe('Refuelling: liquid dispensed'),
      tankGaugePa: z.number().exactOptional().describe('At the start, of a tank sealed before'),
      vapourDeficitPa: z.number().max(0).exactOptional().describe('At the start, vapour below saturation'),
    }),
    sampling: z.strictObject({
      rateHz: z.number().positive(),
      jitter: z.number().min(0).max(0.45).describe('Scatter of the sample times, share of the interval'),
      pressureStepPa: z.number().nonnegative().describe('Step of the pressure channel, 0 for none'),
      noisePa: z.number().nonnegative().describe('Added to the noise of the sensor'),
      slosh: z
        .strictObject({ pressurePa: z.number().nonnegative(), correlationS: z.number().positive() })
        .exactOptional()
        .describe('Swings of the pressure while the fuel moves: standard deviation and correlation time'),
      seed: z.int().nonnegative().describe('The same seed gives the same recording'),
    }),
    trace: z.array(z.string()).exactOptional().describe('More quantities, as tank.gaugePa or purge.flowKgPerS'),
  })
  .describe('A scenario to simulate');
export type ScenarioFile = z.infer<typeof scenarioSchema>;

function makeProcedure({ kind, settings: given }: ScenarioFile['procedure']): Procedure {
  // The schema has checked that the settings are those of this kind.
  const make = PROCEDURE_MAKERS[kind].make as (given?: object) => Procedure;
  return make(given ?? {});
}

export function scenarioFromFile(file: ScenarioFile): Scenario {
  const { fuelTemperatureK, tankGaugePa, vapourDeficitPa, ...around } = file.conditions;
  return {
    label: file.label,
    network: assembleCar(file.car, file.faults, (parameters) => {
      parameters.tank.fillFraction = file.fuelLevel;
    }),
    procedure: makeProcedure(file.procedure),
    conditions: {
      ...around,
      start: {
        fuelTemperatureK,
        ...(tankGaugePa === undefined ? {} : { tankGaugePa }),
        ...(vapourDeficitPa === undefined ? {} : { vapourDeficitPa }),
      },
    },
    sampling: file.sampling,
  };
}
