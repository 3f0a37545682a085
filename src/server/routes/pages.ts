/** The built pages: files by name, and the one page for every address that the pages themselves know. */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import fastifyStatic from '@fastify/static';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { API } from '../contract/paths.ts';
import type { App } from '../parts.ts';
import { notFound } from '../refusal.ts';

const YEAR = 'public, max-age=31536000, immutable';
/** Asked for anew each time, answered with "unchanged" where that is so. */
const ASK = 'no-cache';

const NOT_BUILT = `<!doctype html><html lang="en"><meta charset="utf-8"><title>Vaporwright</title>
<h1>The pages have not been built</h1><p>The server runs; its pages are missing. In a clone of the project, start it with
<code>npm start</code>, which builds them.</p></html>`;

/** Vite puts a hash of the content into the names of these. */
const hasHashedName = (path: string): boolean => /[/\\]assets[/\\][^/\\]+-[\w-]{8,}\.\w+$/.test(path);

export async function pages(app: App, folder: string): Promise<void> {
  const isBuilt = existsSync(join(folder, 'index.html'));
  if (isBuilt) {
    await app.register(fastifyStatic, {
      root: folder,
      wildcard: true,
      index: false,
      decorateReply: false,
      // .br and .gz beside a file, made by the build, are sent to those who take them.
      preCompressed: true,
      cacheControl: false,
      setHeaders: (reply, path) => {
        reply.header('cache-control', hasHashedName(path.replace(/\.(br|gz)$/, '')) ? YEAR : ASK);
        if (/[/\\]sw\.js(\.br|\.gz)?$/.test(path)) reply.header('service-worker-allowed', '/');
      },
    });
  }

  const page = async (reply: FastifyReply): Promise<FastifyReply> =>
    reply
      .code(isBuilt ? 200 : 503)
      .header('content-type', 'text/html; charset=utf-8')
      .header('cache-control', ASK)
      .send(isBuilt ? await readFile(join(folder, 'index.html')) : NOT_BUILT);

  const wantsPage = ({ method, url }: FastifyRequest): boolean => {
    const path = url.split('?')[0] ?? '';
    return (method === 'GET' || method === 'HEAD') && !path.startsWith(API) && !/\.\w+$/.test(path);
  };

  app.get('/', { schema: { hide: true } }, (_request, reply) => page(reply));
  app.setNotFoundHandler(async (request, reply) => {
    if (wantsPage(request)) return page(reply);
    throw notFound(`"${request.method} ${request.url.split('?')[0]}"`);
  });
}
