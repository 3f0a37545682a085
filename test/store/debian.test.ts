import { describe, test } from 'vitest';
import { storeContract } from './contract.ts';
import { debianPrograms, SKIP } from './debian-programs.ts';

if (process.env[SKIP]) {
  describe('the store on the PostgreSQL of the system', () => {
    test.skip(`left out because ${SKIP} is set`, () => undefined);
  });
} else {
  storeContract('the store on the PostgreSQL of the system', debianPrograms);
}
