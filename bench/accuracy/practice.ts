/** Reads a folder of recordings in the practice format: `case-XXXX.csv.gz` beside `case-XXXX.vehicle.json`. */
import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { z } from 'zod';
import type { ProcedureKind, Recording, RecordingNotes } from '../../src/recording/recording.ts';
import type { Car } from '../../src/system/car.ts';

const vehicleSchema = z.object({
  procedure: z.string(),
  tank_volume_nominal_l: z.number().optional(),
  filler_neck_volume_nominal_l: z.number().optional(),
  canister_free_volume_nominal_l: z.number().optional(),
  sensor_range_pa: z.tuple([z.number(), z.number()]).optional(),
  sensor_volts: z.tuple([z.number(), z.number()]).optional(),
  sensor_accuracy_pct_of_reading: z.number().optional(),
  sensor_offset_limit_pa: z.number().optional(),
  fuel_rvp_range_kpa: z.tuple([z.number(), z.number()]).optional(),
  draw_target_pa: z.number().optional(),
  draw_timeout_s: z.number().optional(),
  pump_flow_nominal_l_per_min: z.number().optional(),
  nozzle_shut_off_times_s: z.array(z.number()).optional(),
  litres_pumped: z.number().optional(),
});

const PROCEDURE_LETTERS: Readonly<Record<string, ProcedureKind>> = {
  A: 'vacuum-draw',
  B: 'engine-off',
  C: 'purge-drive',
  D: 'refuelling',
};

export interface PracticeCase {
  readonly name: string;
  readonly letter: string;
  readonly car: Car;
  readonly notes: RecordingNotes;
  readonly file: string;
}

/** Names of the cases in a folder. */
export function listCases(folder: string): string[] {
  return readdirSync(folder)
    .filter((f) => /^case-.*\.vehicle\.json$/.test(f))
    .map((f) => f.slice(0, -'.vehicle.json'.length))
    .sort();
}

export function readCase(folder: string, name: string): PracticeCase {
  const v = vehicleSchema.parse(JSON.parse(readFileSync(join(folder, `${name}.vehicle.json`), 'utf8')));
  const letter = v.procedure.trim().charAt(0);
  const litres = (x: number) => x * 1e-3;
  const procedure = PROCEDURE_LETTERS[letter];
  return {
    name,
    letter,
    file: join(folder, `${name}.csv.gz`),
    car: {
      schema: 'vaporwright-car-1',
      label: name,
      layout: procedure === 'engine-off' ? 'engine-off' : 'engine-vacuum',
      ...(v.tank_volume_nominal_l !== undefined && { tankVolumeM3: litres(v.tank_volume_nominal_l) }),
      ...(v.filler_neck_volume_nominal_l !== undefined && { fillerNeckVolumeM3: litres(v.filler_neck_volume_nominal_l) }),
      ...(v.canister_free_volume_nominal_l !== undefined && {
        canisterFreeVolumeM3: litres(v.canister_free_volume_nominal_l),
      }),
      ...(v.sensor_range_pa && {
        pressureSensor: {
          minGaugePa: v.sensor_range_pa[0],
          maxGaugePa: v.sensor_range_pa[1],
          ...(v.sensor_volts && { minV: v.sensor_volts[0], maxV: v.sensor_volts[1] }),
          ...(v.sensor_accuracy_pct_of_reading !== undefined && { gainTolerance: v.sensor_accuracy_pct_of_reading / 100 }),
          ...(v.sensor_offset_limit_pa !== undefined && { offsetTolerancePa: v.sensor_offset_limit_pa }),
        },
      }),
      ...(v.fuel_rvp_range_kpa && {
        fuel: { reidVapourPressurePa: { low: v.fuel_rvp_range_kpa[0] * 1e3, high: v.fuel_rvp_range_kpa[1] * 1e3 } },
      }),
    },
    notes: {
      ...(procedure && { procedure }),
      ...(v.draw_target_pa !== undefined && { drawTargetGaugePa: v.draw_target_pa }),
      ...(v.draw_timeout_s !== undefined && { drawTimeOutS: v.draw_timeout_s }),
      ...(v.pump_flow_nominal_l_per_min !== undefined && { fillFlowM3PerS: litres(v.pump_flow_nominal_l_per_min) / 60 }),
      ...(v.nozzle_shut_off_times_s && { shutOffTimesS: v.nozzle_shut_off_times_s }),
      ...(v.litres_pumped !== undefined && { filledM3: litres(v.litres_pumped) }),
    },
  };
}

/** Plain reading of the practice columns, until the project's reader takes over. */
export function readRecording(c: PracticeCase): Recording {
  const lines = gunzipSync(readFileSync(c.file)).toString('utf8').trim().split('\n');
  const head = lines[0]!.split(',');
  const rows = lines.slice(1).map((l) => l.split(',').map((x) => (x === '' ? Number.NaN : Number(x))));
  const col = (name: string, f: (x: number) => number = (x) => x) => {
    const i = head.indexOf(name);
    return i < 0 ? undefined : Float64Array.from(rows, (r) => f(r[i] ?? Number.NaN));
  };
  const channels: Record<string, Float64Array> = {};
  const set = (k: string, v: Float64Array | undefined) => {
    if (v) channels[k] = v;
  };
  set('tankPressureGaugePa', col('tank_pressure_pa'));
  set('purgeDuty', col('purge_duty_pct', (x) => x / 100));
  set('ventClosed', col('vent_closed'));
  set('fuelLevel', col('fuel_level_pct', (x) => x / 100));
  set('ambientTemperatureK', col('ambient_temp_c', (x) => x + 273.15));
  set('fuelTemperatureK', col('fuel_temp_c', (x) => x + 273.15));
  set('barometricPa', col('baro_kpa', (x) => x * 1e3));
  set('manifoldAbsPa', col('map_kpa', (x) => x * 1e3));
  set('engineSpeedRpm', col('engine_rpm'));
  set('vehicleSpeedMPerS', col('vehicle_speed_kmh', (x) => x / 3.6));
  set('shortTrim', col('stft_pct', (x) => x / 100));
  set('longTrim', col('ltft_pct', (x) => x / 100));
  return { timeS: col('time_s')!, channels, label: basename(c.file), notes: c.notes };
}
