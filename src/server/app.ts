/** The server put together: guards, routes, pages. It listens nowhere yet. */
import cookie from '@fastify/cookie';
import multipart from '@fastify/multipart';
import rateLimit from '@fastify/rate-limit';
import fastify from 'fastify';
import { serializerCompiler, validatorCompiler } from 'fastify-type-provider-zod';
import { asRefusal } from './as-refusal.ts';
import { API } from './contract/paths.ts';
import { SAFE_HEADERS } from './guards/safe-headers.ts';
import { openApi, openApiRoute } from './openapi.ts';
import type { App, Parts } from './parts.ts';
import { Refusal } from './refusal.ts';
import { accountRoutes } from './routes/account-routes.ts';
import { attachmentRoutes } from './routes/attachment-routes.ts';
import { handOverRoutes } from './routes/hand-over-routes.ts';
import { jobRoutes } from './routes/job-routes.ts';
import { liveRoutes } from './routes/live-routes.ts';
import { pages } from './routes/pages.ts';
import { recordingRoutes } from './routes/recording-routes.ts';
import { sessionRoutes } from './routes/session-routes.ts';
import { settingsRoutes } from './routes/settings-routes.ts';
import { shareRoutes } from './routes/share-routes.ts';
import { sharedRoutes } from './routes/shared-routes.ts';
import { transferRoutes } from './routes/transfer-routes.ts';
import { workRoutes } from './routes/work-routes.ts';

/** Largest JSON body: a section of a job with everything its form allows is below (judgement). */
const MOST_JSON_BYTES = 8 * 1024 * 1024;

export interface AppOptions {
  /** Folder of the built pages. */
  readonly pagesFolder: string;
  readonly version: string;
  /** Checks every answer against its documented form; costs time, so tests do it. */
  readonly checksAnswers?: boolean;
  /** Told of faults of the program itself. */
  readonly onFault?: (error: unknown, where: string) => void;
  /** Told of every route, for the tests. */
  readonly onRoute?: (route: {
    readonly method: string | readonly string[];
    readonly url: string;
    readonly needs: unknown;
  }) => void;
}

export async function buildApp(parts: Parts, options: AppOptions): Promise<App> {
  const { doorkeeper } = parts;
  const { pagesFolder, version, checksAnswers = false, onFault = () => {}, onRoute } = options;
  const app = fastify({
    logger: false,
    bodyLimit: MOST_JSON_BYTES,
    exposeHeadRoutes: false,
    // An address behind a proxy is what the connection says, not what a header claims.
    trustProxy: false,
    forceCloseConnections: 'idle',
  }) as unknown as App;
  app.setValidatorCompiler(validatorCompiler);
  // Types hold answers to their form when the program is built; walking each one again would cost more than the query.
  app.setSerializerCompiler(checksAnswers ? serializerCompiler : () => (data) => JSON.stringify(data));
  if (onRoute !== undefined) {
    app.addHook('onRoute', ({ method, url, config }) => onRoute({ method, url, needs: config?.needs }));
  }

  app.setErrorHandler(async (error, request, reply) => {
    const refusal = asRefusal(error);
    if (refusal.facts.code === 'internal') onFault(error, `${request.method} ${request.url.split('?')[0]}`);
    return reply
      .code(refusal.status)
      .header('content-type', 'application/json; charset=utf-8')
      .header('cache-control', 'no-store')
      .serializer(JSON.stringify)
      .send({ error: refusal.facts, ...refusal.beside });
  });

  app.addHook('onRequest', async (request, reply) => {
    reply.headers(SAFE_HEADERS);
    doorkeeper.checkHost(request);
  });

  await app.register(cookie);
  await app.register(multipart);
  await app.register(rateLimit, {
    global: false,
    errorResponseBuilder: (_request, { after }) =>
      new Refusal('too-many', 'Too many tries.', { advice: `Wait ${after}, then try again.` }),
  });
  await openApi(app, version);

  await app.register(
    async (api) => {
      const routes = api as unknown as App;
      routes.decorateRequest('who', null as never);
      routes.addHook('onRequest', async (request, reply) => {
        reply.header('cache-control', 'no-store');
        doorkeeper.checkOrigin(request);
        request.who = await doorkeeper.whoIs(request);
        // A route that says nothing is for the owner alone.
        doorkeeper.admit(request, request.routeOptions.config.needs ?? 'owner');
      });
      jobRoutes(routes, parts);
      recordingRoutes(routes, parts);
      attachmentRoutes(routes, parts);
      workRoutes(routes, parts);
      liveRoutes(routes, parts);
      handOverRoutes(routes, parts);
      settingsRoutes(routes, parts);
      sessionRoutes(routes, parts);
      accountRoutes(routes, parts);
      shareRoutes(routes, parts);
      sharedRoutes(routes, parts);
      transferRoutes(routes, parts);
      openApiRoute(routes);
    },
    { prefix: API },
  );
  await pages(app, pagesFolder);
  return app;
}
