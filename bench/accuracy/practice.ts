/** Reads a folder of recordings in the practice format: `case-XXXX.csv.gz` beside `case-XXXX.vehicle.json`. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { z } from 'zod';
import { readRecordingCsv } from '../../src/recording/read-csv.ts';
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

/** Which cases of a folder take part, by the last number in their name. */
export type Parity = 'even' | 'odd';

export function hasParity(name: string, only: Parity | undefined): boolean {
  if (only === undefined) return true;
  const digits = /(\d+)\D*$/.exec(name)?.[1];
  return digits !== undefined && (Number(digits) % 2 === 0) === (only === 'even');
}

/** Names of the cases in a folder, sorted; one of the two files is enough, so that a lost one shows. */
export function listCases(folder: string): string[] {
  const names = readdirSync(folder).map((file) => /^(case-.+?)\.(vehicle\.json|csv|csv\.gz)$/.exec(file)?.[1]);
  return [...new Set(names.filter((name) => name !== undefined))].sort();
}

const litres = (x: number) => x * 1e-3;

/** A fact that the file gives as null is as absent as one it leaves out. */
function readVehicle(file: string): z.infer<typeof vehicleSchema> {
  const found: unknown = JSON.parse(readFileSync(file, 'utf8'));
  const known = found !== null && typeof found === 'object' ? Object.entries(found).filter(([, x]) => x !== null) : [];
  const parsed = vehicleSchema.safeParse(Object.fromEntries(known));
  if (!parsed.success) throw new Error(`${basename(file)}: ${z.prettifyError(parsed.error).replace(/\s*\n\s*/g, ' ')}`);
  return parsed.data;
}

function recordingFile(folder: string, name: string): string {
  const packed = join(folder, `${name}.csv.gz`);
  const plain = join(folder, `${name}.csv`);
  return !existsSync(packed) && existsSync(plain) ? plain : packed;
}

/** What the technician knows of the car, and the facts of the event, from the two files of a case. */
export function readCase(folder: string, name: string): PracticeCase {
  const v = readVehicle(join(folder, `${name}.vehicle.json`));
  const letter = v.procedure.trim().charAt(0);
  const procedure = PROCEDURE_LETTERS[letter];
  return {
    name,
    letter,
    file: recordingFile(folder, name),
    car: {
      schema: 'vaporwright-car-1',
      label: name,
      layout: procedure === 'engine-off' ? 'engine-off' : 'engine-vacuum',
      ...(v.tank_volume_nominal_l !== undefined && { tankVolumeM3: litres(v.tank_volume_nominal_l) }),
      ...(v.filler_neck_volume_nominal_l !== undefined && {
        fillerNeckVolumeM3: litres(v.filler_neck_volume_nominal_l),
      }),
      ...(v.canister_free_volume_nominal_l !== undefined && {
        canisterFreeVolumeM3: litres(v.canister_free_volume_nominal_l),
      }),
      ...(v.sensor_range_pa && {
        pressureSensor: {
          minGaugePa: v.sensor_range_pa[0],
          maxGaugePa: v.sensor_range_pa[1],
          ...(v.sensor_volts && { minV: v.sensor_volts[0], maxV: v.sensor_volts[1] }),
          ...(v.sensor_accuracy_pct_of_reading !== undefined && {
            gainTolerance: v.sensor_accuracy_pct_of_reading / 100,
          }),
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
      ...(v.pump_flow_nominal_l_per_min !== undefined && {
        fillFlowM3PerS: litres(v.pump_flow_nominal_l_per_min) / 60,
      }),
      ...(v.nozzle_shut_off_times_s && { shutOffTimesS: v.nozzle_shut_off_times_s }),
      ...(v.litres_pumped !== undefined && { filledM3: litres(v.litres_pumped) }),
    },
  };
}

/** The recording of a case through the project's own reader, which moves times to start at 0, those in the notes too. */
export function readRecording(c: PracticeCase): Recording {
  const bytes = readFileSync(c.file);
  const text = (isGzip(bytes) ? gunzipSync(bytes) : bytes).toString('utf8');
  return readRecordingCsv(text, { fileName: basename(c.file), car: c.car, notes: c.notes }).recording;
}

const isGzip = (bytes: Uint8Array): boolean => bytes[0] === 0x1f && bytes[1] === 0x8b;
