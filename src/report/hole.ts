import type { CauseId, CauseProbability, Interval } from '../diagnosis/finding.ts';

/** Causes that are themselves a way to the open air; under any other the diameter is that of what else may leak. */
const OPEN_AIR: ReadonlySet<CauseId> = new Set(['leak', 'gross_leak', 'vent_leak']);

export const isOpenAir = (id: CauseId): boolean => OPEN_AIR.has(id);

/** The size of the fault that a cause names, where that fault is a hole to the open air. */
export const holeOf = (cause: Pick<CauseProbability, 'id' | 'diameterMm'>): Interval | undefined =>
  isOpenAir(cause.id) ? cause.diameterMm : undefined;
