/** What a hand-over document of a job is made from, as plain data for the worker thread. */
import { createHash } from 'node:crypto';
import { codesAroundRepair } from '../../jobs/hand-over/codes-around-repair.ts';
import { canonicalJson } from '../../jobs/record/finding-inputs.ts';
import type { Job } from '../../jobs/record/job.ts';
import type { HandOverRequest } from '../contract/hand-over.ts';
import type { Parts } from '../parts.ts';
import { readSettings } from '../routes/settings-routes.ts';
import type { HandOverInputs } from './hand-over-task.ts';
import { PICTURE_TYPES } from './pictures.ts';

export async function handOverInputs(
  { store, readings, program }: Pick<Parts, 'store' | 'readings' | 'program'>,
  job: Job,
  request: HandOverRequest,
): Promise<HandOverInputs> {
  const { shop, technician, limits, inspectionRules, inspectionRule } = await readSettings(store.settings);
  const history = await store.jobs.history(job.id);
  const told = new Set(job.findings.flatMap(({ sheet }) => sheet.recordings.map(({ sha256 }) => sha256)));
  return {
    job,
    settings: {
      ...request,
      shop,
      ...(technician === undefined ? {} : { technician }),
      limits,
      program,
      madeAt: new Date().toISOString(),
      codes: codesAroundRepair(job, history),
      rules: {
        ...(inspectionRules === undefined ? {} : { inspectionRules }),
        ...(inspectionRule === undefined ? {} : { inspectionRule }),
      },
    },
    readings: job.recordings
      .filter(({ sha256 }) => !told.has(sha256))
      .map((entry) => ({ id: entry.id, reading: readings.inputsOf(job.car, entry) })),
    pictures: request.parts.includes('evidence')
      ? job.attachments
          .filter(({ mediaType }) => PICTURE_TYPES.includes(mediaType))
          .map(({ id, sha256 }) => ({ id, path: store.files.path(sha256) }))
      : [],
  };
}

/** The same request of the same job is the same document, whenever it is asked for. */
export const handOverKey = (job: Job, request: HandOverRequest): string =>
  createHash('sha256')
    .update(canonicalJson({ version: job.version, request }))
    .digest('hex');
