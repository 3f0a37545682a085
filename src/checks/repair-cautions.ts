/** Cautions of a repair: those of the places that it is done at, of what is handled, and of the check that proves it. */
import { checkById } from './catalogue/all.ts';
import { CAUTION_IDS, type CautionId } from './cautions.ts';
import { REPAIRS, type RepairId } from './repairs.ts';

/** Every repair opens the vapour side. */
const ALWAYS: readonly CautionId[] = ['vapour', 'open slowly', 'sealed tank'];

/** What is handled, besides what the set-ups say. */
const HANDLED: Readonly<Partial<Record<RepairId, readonly CautionId[]>>> = {
  'purge valve': ['hot and moving', 'carbon'],
  'purge line': ['hot and moving'],
  ejector: ['hot and moving'],
  'purge circuit': ['electrical', 'module may act'],
  'vent circuit': ['electrical', 'module may act'],
  'vent valve': ['carbon', 'module may act'],
  'vent filter': ['carbon'],
  canister: ['carbon'],
  'filler pipe': ['open fuel'],
  'filler hose': ['open fuel'],
  'inlet check valve': ['open fuel'],
};

/** In the order of `CAUTION_IDS`, each once. Throws on a repair that does not exist. */
export function cautionsOfRepair(id: RepairId): readonly CautionId[] {
  const repair = REPAIRS.find((one) => one.id === id);
  if (repair === undefined) throw new RangeError(`no repair is called "${id}"`);
  const { setups, verifiedBy } = repair;
  const all = new Set<CautionId>([
    ...ALWAYS,
    ...(setups.includes('lift') ? (['lift'] as const) : []),
    ...(setups.includes('tank lowered') ? (['open fuel'] as const) : []),
    ...(HANDLED[id] ?? []),
    ...checkById(verifiedBy).cautions,
  ]);
  return CAUTION_IDS.filter((caution) => all.has(caution));
}
