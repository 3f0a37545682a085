/** `proof`: whether the repair of an exported job held, with the numbers that say so. */
import { JOB_FILE_FORMAT, jobFileSchema } from '../jobs/record/job-file.ts';
import { proofOfJob } from '../jobs/record/proof-of-job.ts';
import { REFERENCE_LIMITS } from '../report/limits.ts';
import { parseQuantity } from '../units/parse-quantity.ts';
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { readJsonFile } from './json-file.ts';
import { printJson, printText } from './output.ts';
import { provedInWords } from './proof-words.ts';

export interface ProofOptions {
  readonly limit?: string;
  readonly json?: boolean;
}

const MM_PER_M = 1e3;
/** Nobody is held to a hole outside this, mm: it is a slip of the unit. */
const LEAST_MM = 0.05;
const MOST_MM = 20;

function limitFrom(text: string): number {
  const named = REFERENCE_LIMITS.find(({ label }) => label === text.trim());
  if (named !== undefined) return named.diameterMm;
  const parsed = parseQuantity(text, 'length');
  const mm = parsed.ok ? parsed.valueSi * MM_PER_M : Number.NaN;
  if (parsed.ok && mm >= LEAST_MM && mm <= MOST_MM) return mm;
  throw new Failure(EXIT.usage, 'the limit cannot be taken', {
    found: parsed.ok ? text : parsed.problem,
    expected: `a diameter from ${LEAST_MM} to ${MOST_MM} mm with its unit, as "0.5 mm", or one of ${REFERENCE_LIMITS.map(({ label }) => label).join(', ')}`,
  });
}

export function proofCommand(file: string, { limit, json }: ProofOptions): void {
  const asked = limit === undefined ? undefined : limitFrom(limit);
  const { job } = readJsonFile(file, jobFileSchema, JOB_FILE_FORMAT).value;
  if (job.repairs.length === 0) {
    throw new Failure(EXIT.input, `job ${job.number} has no repair to prove`, {
      file,
      advice: 'Record the repair on the job sheet, measure again as before, and export the job anew.',
    });
  }
  const limitMm = asked ?? job.proof?.limit?.diameterMm ?? REFERENCE_LIMITS[0]!.diameterMm;
  const { proof } = proofOfJob(job, limitMm);
  if (json === true) printJson({ schema: 'vaporwright-proof-1', job: job.number, ...proof });
  else printText(provedInWords(proof));
}
