/** Every published format by the name that `vaporwright schema NAME` and docs/schemas use. */
import { z } from 'zod';
import { jobStateSchema } from '../checks/job-format.ts';
import { jobFileSchema } from '../jobs/record/job-file.ts';
import { conditionsSchema } from '../readiness/conditions.ts';
import { inspectionRuleSchema } from '../readiness/inspection.ts';
import { mappingSchema } from '../recording/mapping.ts';
import { limitsSchema } from '../report/limits.ts';
import { storedSheetSchema } from '../report/sheet.ts';
import { carSchema } from '../system/car.ts';
import { captureResultSchema, readinessResultSchema } from './car-formats.ts';
import { machineFindingSchema } from './machine-finding.ts';
import { notesSchema } from './notes.ts';
import { planResultSchema } from './plan-formats.ts';
import { proofResultSchema } from './proof-formats.ts';
import {
  benchResultSchema,
  errorSchema,
  readResultSchema,
  reportResultSchema,
  schemaResultSchema,
  simulateResultSchema,
} from './result-formats.ts';
import { scenarioSchema } from './scenario-file.ts';
import {
  backupResultSchema,
  exportResultSchema,
  importResultSchema,
  restoreResultSchema,
  serveResultSchema,
} from './store-formats.ts';

export const FORMATS: Readonly<Record<string, z.ZodType>> = {
  car: carSchema,
  mapping: mappingSchema,
  notes: notesSchema,
  limits: limitsSchema,
  scenario: scenarioSchema,
  monitor: conditionsSchema,
  inspection: inspectionRuleSchema,
  finding: storedSheetSchema,
  diagnose: machineFindingSchema,
  troubleshooting: jobStateSchema,
  plan: planResultSchema,
  proof: proofResultSchema,
  'job-file': jobFileSchema,
  read: readResultSchema,
  report: reportResultSchema,
  simulate: simulateResultSchema,
  readiness: readinessResultSchema,
  capture: captureResultSchema,
  serve: serveResultSchema,
  backup: backupResultSchema,
  restore: restoreResultSchema,
  'export-job': exportResultSchema,
  'import-job': importResultSchema,
  schema: schemaResultSchema,
  bench: benchResultSchema,
  error: errorSchema,
};

/** JSON Schema 2020-12. Objects that the program prints may gain fields in later versions. */
export function jsonSchemaOf(name: string): object | undefined {
  const format = FORMATS[name];
  if (format === undefined) return undefined;
  return { ...z.toJSONSchema(format, { io: 'input' }), title: `vaporwright ${name}` };
}
