/** Any thrown thing as a refusal: the store's, the framework's and the program's own faults in one form. */
import { hasZodFastifySchemaValidationErrors } from 'fastify-type-provider-zod';
import { NoSuchJob, NothingToUndo, VersionConflict } from '../jobs/job-store.ts';
import { StoreProblem, type StoreProblemCode } from '../jobs/store-problem.ts';
import type { ErrorCode } from './contract/error.ts';
import { UnreadableFile } from './recordings/read-file.ts';
import { Refusal } from './refusal.ts';

const STORE_CODES: Readonly<Partial<Record<StoreProblemCode, ErrorCode>>> = {
  'disk-full': 'no-room',
  'no-answer': 'store-away',
  'not-empty': 'not-possible',
  'bad-file': 'unreadable',
  'missing-file': 'not-found',
};

function fromBadRequest(error: object): Refusal | undefined {
  if (!hasZodFastifySchemaValidationErrors(error)) return undefined;
  const [first, ...more] = error.validation;
  const where = first?.instancePath.replaceAll('/', '.').replace(/^\./, '') ?? '';
  const part = 'validationContext' in error ? String(error.validationContext) : 'request';
  return new Refusal('bad-request', `The ${part} does not fit what is expected here.`, {
    found: where === '' ? part : `${part}: ${where}`,
    ...(first?.message === undefined ? {} : { expected: first.message }),
    advice: `The formats are described at /api/v1/openapi.json.${more.length > 0 ? ` ${more.length} more to put right after this one.` : ''}`,
  });
}

/** Codes of the framework that the sender can do something about. */
function fromFramework(error: Error): Refusal | undefined {
  const code = 'code' in error ? String(error.code) : '';
  if (code === 'ERR_WORKER_OUT_OF_MEMORY') {
    return new Refusal('too-large', 'This needs more memory than this machine gives.', {
      advice: 'Cut the recording to the event in question.',
    });
  }
  const status = 'statusCode' in error ? Number(error.statusCode) : 0;
  if (code === 'FST_REQ_FILE_TOO_LARGE' || status === 413) {
    return new Refusal('too-large', 'That is larger than what is taken in here.', {
      advice: 'Cut the recording to the event, or pack it with gzip.',
    });
  }
  if (status === 415) {
    return new Refusal('not-a-recording', 'The form of the request is not one that is understood here.', {
      ...(error.message === '' ? {} : { found: error.message }),
      expected: 'application/json, or multipart/form-data for files',
    });
  }
  if (status === 429) return new Refusal('too-many', error.message);
  if (status === 404) return new Refusal('not-found', error.message);
  if (status >= 400 && status < 500) return new Refusal('bad-request', error.message);
  return undefined;
}

export function asRefusal(thrown: unknown): Refusal {
  if (thrown instanceof Refusal) return thrown;
  if (thrown instanceof NoSuchJob) {
    return new Refusal('not-found', thrown.message, { advice: 'It may have been removed; go back to the list.' });
  }
  if (thrown instanceof NothingToUndo) {
    return new Refusal('not-possible', thrown.message, { advice: 'Everything stands as it was first written.' });
  }
  if (thrown instanceof VersionConflict) {
    return new Refusal(
      'changed-meanwhile',
      thrown.message,
      { advice: 'Look at what stands now, then make the change again where it is still wanted.' },
      { current: thrown.current },
    );
  }
  if (thrown instanceof UnreadableFile) {
    return new Refusal(
      'unreadable',
      thrown.message,
      thrown.facts,
      thrown.guessed === undefined ? {} : { guessed: thrown.guessed },
    );
  }
  if (thrown instanceof StoreProblem) {
    return new Refusal(STORE_CODES[thrown.code] ?? 'internal', thrown.message, { advice: thrown.advice });
  }
  if (thrown instanceof Error) {
    const refusal = fromBadRequest(thrown) ?? fromFramework(thrown);
    if (refusal !== undefined) return refusal;
  }
  return new Refusal(
    'internal',
    'The program made a mistake; nothing was changed by this request that was not confirmed.',
    {
      advice: 'Try again. If it happens again, report it with what you did; the server has printed the details.',
    },
  );
}
