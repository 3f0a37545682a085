/** The room rules are worth what they catch: wrong arrows are planted in a copy and must be found. */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
let copy = '';

beforeAll(() => {
  copy = mkdtempSync(join(tmpdir(), 'vaporwright-rooms-'));
  for (const name of ['.dependency-cruiser.cjs', 'tsconfig.json', 'tsconfig.base.json', 'package.json']) {
    cpSync(join(root, name), join(copy, name));
  }
  symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'));
  // Small rooms of our own, so that the test says something of the rules and not of the code of the day.
  for (const room of ['units', 'physics', 'system', 'simulation', 'recording', 'diagnosis', 'report', 'cli']) {
    plant(`src/${room}/ground.ts`, `export const ${room} = 1;\n`);
  }
});
afterAll(() => rmSync(copy, { recursive: true, force: true }));

function plant(path: string, text: string): void {
  mkdirSync(dirname(join(copy, path)), { recursive: true });
  writeFileSync(join(copy, path), text);
}

function check(): { readonly code: number | null; readonly text: string } {
  const program = join(root, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const run = spawnSync(process.execPath, [program, 'src', '--config', '.dependency-cruiser.cjs'], {
    cwd: copy,
    encoding: 'utf8',
  });
  return { code: run.status, text: `${run.stdout}${run.stderr}` };
}

test('right arrows pass', () => {
  plant(
    'src/diagnosis/right.ts',
    "import { physics } from '../physics/ground.ts';\nimport { recording } from '../recording/ground.ts';\nexport const right = physics + recording;\n",
  );
  expect(check()).toMatchObject({ code: 0 });
});

describe('a wrong arrow is found', () => {
  test.each([
    ['physics', 'diagnosis', 'room-physics'],
    ['units', 'physics', 'room-units'],
    ['recording', 'simulation', 'room-recording'],
    ['simulation', 'cli', 'room-simulation'],
    ['system', 'simulation', 'room-system'],
    ['report', 'cli', 'room-report'],
  ])('%s to %s', (from, to, rule) => {
    const path = `src/${from}/wrong.ts`;
    plant(path, `import { ${to} } from '../${to}/ground.ts';\nexport const wrong = ${to};\n`);
    const found = check();
    rmSync(join(copy, path));
    expect(found.code).not.toBe(0);
    expect(found.text).toContain(rule);
    expect(found.text).toContain(path);
  });

  test('a type is an arrow too', () => {
    plant('src/physics/wrong.ts', "import type { cli } from '../cli/ground.ts';\nexport type Wrong = typeof cli;\n");
    const found = check();
    rmSync(join(copy, 'src/physics/wrong.ts'));
    expect(found.text).toContain('room-physics');
  });

  test('a pure room that reads files', () => {
    plant('src/system/wrong.ts', "import { readFileSync } from 'node:fs';\nexport const wrong = readFileSync;\n");
    const found = check();
    rmSync(join(copy, 'src/system/wrong.ts'));
    expect(found.text).toContain('pure-rooms-have-no-node');
  });

  test('a folder that is no room', () => {
    plant('src/helpers/wrong.ts', "import { units } from '../units/ground.ts';\nexport const wrong = units;\n");
    const found = check();
    rmSync(join(copy, 'src/helpers'), { recursive: true });
    expect(found.text).toContain('unknown-room');
  });

  test('a circle', () => {
    plant('src/units/a.ts', "import { b } from './b.ts';\nexport const a = () => b;\n");
    plant('src/units/b.ts', "import { a } from './a.ts';\nexport const b = () => a;\n");
    const found = check();
    rmSync(join(copy, 'src/units/a.ts'));
    rmSync(join(copy, 'src/units/b.ts'));
    expect(found.text).toContain('no-cycles');
  });
});
