/** No repair without its cautions. */
import { expect, test } from 'vitest';
import { checkById } from './catalogue/all.ts';
import { cautionsOfRepair } from './repair-cautions.ts';
import { REPAIRS } from './repairs.ts';

test.each(REPAIRS)(
  '$id: vapour always, the lift and open fuel where they are, and those of its verification',
  (repair) => {
    const cautions = cautionsOfRepair(repair.id);
    expect(cautions).toContain('vapour');
    if (repair.setups.includes('lift')) expect(cautions).toContain('lift');
    if (repair.setups.includes('tank lowered')) expect(cautions).toContain('open fuel');
    expect(cautions).toEqual(expect.arrayContaining([...checkById(repair.verifiedBy).cautions]));
    expect(new Set(cautions).size).toBe(cautions.length);
  },
);

test('circuits are powered, carbon is dust', () => {
  expect(cautionsOfRepair('purge circuit')).toContain('electrical');
  expect(cautionsOfRepair('canister')).toContain('carbon');
});
