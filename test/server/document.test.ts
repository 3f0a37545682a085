/** The document of the API says what is there: all of it, nothing else, and for whom. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type TestServer, testServer } from '../store/test-server.ts';
import { type Bench, openBench } from './bench.ts';

interface Operation {
  readonly summary?: string;
  readonly responses?: Readonly<Record<string, unknown>>;
}
interface Document {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, unknown>> };
}

let server: TestServer;
let bench: Bench;
let document: Document;
beforeAll(async () => {
  server = await testServer();
  bench = await openBench(server);
  document = (await bench.client().ask<Document>('GET', '/openapi.json')).body;
});
afterAll(async () => {
  await bench?.close();
  await server?.leave();
});

const registered = () =>
  bench.routes
    .filter(({ url }) => url.startsWith('/api/'))
    .flatMap(({ method, url, needs }) =>
      [method].flat().map((verb) => ({ verb: verb.toLowerCase(), path: url.replace(/:(\w+)/g, '{$1}'), needs })),
    );

test('every route is in the document and the document has no other', () => {
  const documented = Object.entries(document.paths).flatMap(([path, verbs]) =>
    Object.keys(verbs).map((verb) => `${verb} ${path}`),
  );
  expect(documented.sort()).toEqual(
    registered()
      .map(({ verb, path }) => `${verb} ${path}`)
      .sort(),
  );
  expect(documented.length).toBeGreaterThan(35);
});

test('every route says who may use it, and outside of signing in and links nobody may unnamed', () => {
  for (const { path, needs } of registered()) expect([path, needs]).toEqual([path, expect.stringMatching(/./)]);
  const open = registered().filter(({ needs }) => needs === 'anybody');
  expect([...new Set(open.map(({ path }) => path))].sort()).toEqual([
    '/api/v1/accounts/first',
    '/api/v1/openapi.json',
    '/api/v1/session',
    '/api/v1/shared/{token}',
    '/api/v1/shared/{token}/attachments/{aid}',
    '/api/v1/shared/{token}/hand-overs/{hid}/pdf',
    '/api/v1/shared/{token}/inspection-rule',
    '/api/v1/shared/{token}/recordings/{rid}/preview',
    '/api/v1/shared/{token}/recordings/{rid}/samples',
  ]);
});

test('every route is described, with an answer that succeeds and the form of a refusal', () => {
  for (const [path, verbs] of Object.entries(document.paths)) {
    for (const [verb, { summary, responses = {} }] of Object.entries(verbs)) {
      const where = `${verb} ${path}`;
      expect([where, summary]).toEqual([where, expect.stringMatching(/.{7}/)]);
      expect([where, Object.keys(responses).some((status) => status.startsWith('2'))]).toEqual([where, true]);
      if (path !== '/api/v1/openapi.json') expect([where, responses['4XX']]).not.toEqual([where, undefined]);
    }
  }
});

test('references point at something', () => {
  const names = [...JSON.stringify(document).matchAll(/"\$ref":"#\/components\/schemas\/([^"]+)"/g)].map(
    ([, name]) => name!,
  );
  expect(names.length).toBeGreaterThan(10);
  for (const name of names) expect(Object.keys(document.components.schemas)).toContain(name);
});
