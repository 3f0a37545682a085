/** SHA-256 of all that a finding is made from. */
import { createHash } from 'node:crypto';
import { canonicalJson, findingInputs } from './record/finding-inputs.ts';

export function inputsSha256(job: Parameters<typeof findingInputs>[0]): string {
  return createHash('sha256')
    .update(canonicalJson(findingInputs(job)))
    .digest('hex');
}
