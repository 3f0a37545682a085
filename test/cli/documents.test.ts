/** Documents that name files or commands are held to it. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from './run.ts';

const documents = [
  'README.md',
  'ARCHITECTURE.md',
  'CONTRIBUTING.md',
  'CHANGELOG.md',
  ...readdirSync(join(ROOT, 'docs', 'decisions')).map((name) => `docs/decisions/${name}`),
  'docs/benchmarks.md',
];

describe.each(documents)('%s', (name) => {
  const text = readFileSync(join(ROOT, name), 'utf8');

  test('names only files that exist', () => {
    const named = [
      ...[...text.matchAll(/`((?:src|test|docs|scripts|examples|bench|bin|tools|\.ci)\/[\w./-]+)`/g)].map(
        (match) => match[1] ?? '',
      ),
      ...[...text.matchAll(/\]\(([^)#:]+)\)/g)].map((match) => match[1] ?? ''),
      ...[...text.matchAll(/\b(examples\/[\w.-]+\.json)\b/g)].map((match) => match[1] ?? ''),
    ];
    const missing = named.filter((path) => !existsSync(join(ROOT, path)));
    expect(missing).toEqual([]);
  });

  test('names only npm scripts that exist', () => {
    const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
      scripts: Record<string, string>;
    };
    const called = [...text.matchAll(/npm run ([\w:-]+)/g)].map((match) => match[1] ?? '');
    expect(called.filter((script) => scripts[script] === undefined)).toEqual([]);
  });
});

test('the README shows a picture and the two commands first', () => {
  const text = readFileSync(join(ROOT, 'README.md'), 'utf8');
  expect(text.indexOf('npm start')).toBeLessThan(text.indexOf('## '));
  expect(text.indexOf('npm test')).toBeLessThan(text.indexOf('## '));
  expect(text).toContain('docs/pictures/report.png');
});
