/**
 * Compares with a committed file. A missing golden fails; a changed result is written beside it for the eye.
 * Goldens are renewed on purpose only: UPDATE_GOLDENS=1 npx vitest run src/report
 */
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

export function expectGolden(goldenUrl: URL, actual: string): void {
  const path = fileURLToPath(goldenUrl);
  const changed = path.replace(/(\.[^.]+)$/, '.changed$1');
  if (process.env.UPDATE_GOLDENS === '1') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, actual);
  }
  if (!existsSync(path)) throw new Error(`golden ${path} is missing; look at the result and renew it on purpose`);
  const isSame = readFileSync(path, 'utf8') === actual;
  if (isSame) rmSync(changed, { force: true });
  else writeFileSync(changed, actual);
  expect(isSame, `${path} differs; the new result is in ${changed}`).toBe(true);
}
