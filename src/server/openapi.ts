/** The document of the API, made from the routes themselves. */
import fastifySwagger from '@fastify/swagger';
import { createJsonSchemaTransform, createJsonSchemaTransformObject } from 'fastify-type-provider-zod';
import { z } from 'zod';
import { historyEntrySchema, jobSchema, jobSummarySchema } from '../jobs/record/job.ts';
import { storedSheetSchema } from '../report/sheet.ts';
import { errorBodySchema } from './contract/error.ts';
import { liveStatusSchema } from './contract/live.ts';
import { workSchema } from './contract/work.ts';
import type { App } from './parts.ts';

/** Shapes that many routes share, by the name that the document gives them. */
const NAMED = z.registry<{ id: string }>();
NAMED.add(jobSchema, { id: 'Job' });
NAMED.add(jobSummarySchema, { id: 'JobSummary' });
NAMED.add(historyEntrySchema, { id: 'HistoryEntry' });
NAMED.add(storedSheetSchema, { id: 'Finding' });
NAMED.add(workSchema, { id: 'Work' });
NAMED.add(liveStatusSchema, { id: 'LiveRecording' });
NAMED.add(errorBodySchema, { id: 'Refusal' });

const fromZod = createJsonSchemaTransform({ schemaRegistry: NAMED });

/** Multipart bodies are read as a stream, not by a schema; here is what may be in them. */
const uploadBody = (fields: readonly string[]) => ({
  type: 'object',
  required: ['file'],
  properties: {
    ...Object.fromEntries(fields.map((name) => [name, { type: 'string' }])),
    file: { type: 'string', format: 'binary' },
  },
});

export async function openApi(app: App, version: string): Promise<void> {
  await app.register(fastifySwagger, {
    openapi: {
      openapi: '3.1.0',
      info: {
        title: 'Vaporwright',
        version,
        description:
          'Jobs of a shop that repairs fuel-vapour systems: recordings, findings, checks, repairs, hand-over. Requests that change something carry the token of GET /session in the header x-vaporwright-csrf. A refusal is always {"error": {"code", "message", …}}.',
      },
    },
    transform: (given) => {
      const made = fromZod(given as Parameters<typeof fromZod>[0]);
      const upload = given.route.config?.upload;
      if (upload === undefined) return made;
      const schema = { ...made.schema, consumes: ['multipart/form-data'], body: uploadBody(upload) };
      return { ...made, schema };
    },
    transformObject: createJsonSchemaTransformObject({ schemaRegistry: NAMED }),
  });
}

export function openApiRoute(app: App): void {
  app.get(
    '/openapi.json',
    {
      config: { needs: 'anybody' },
      schema: { summary: 'This document', response: { 200: z.record(z.string(), z.unknown()) } },
    },
    async () => app.swagger() as unknown as Record<string, unknown>,
  );
}
