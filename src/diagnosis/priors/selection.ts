/** Which causes each procedure can show at all: a technician records what can show what he suspects. */
import type { ProcedureKind } from '../../recording/recording.ts';
import type { CauseId } from '../finding.ts';

/** Causes that leave the procedure's pressure as it is. Common practice, no source. */
const HIDDEN: Readonly<Partial<Record<ProcedureKind | 'unknown', readonly CauseId[]>>> = {
  'vacuum-draw': ['fill_valve_stuck_open', 'sensor_gain', 'canister_saturated'],
  'engine-off': [
    'purge_stuck_closed',
    'canister_saturated',
    'fill_valve_stuck_open',
    'sensor_gain',
    'purge_stuck_open',
  ],
  'purge-drive': ['leak', 'vent_leak', 'purge_leak', 'sensor_gain', 'fill_valve_stuck_open'],
  // the cap is off, the engine too
  refuelling: [
    'leak',
    'gross_leak',
    'vent_leak',
    'purge_leak',
    'purge_stuck_open',
    'purge_stuck_closed',
    'canister_saturated',
    'sensor_gain',
  ],
};
/**
 * Causes whose pressure in the procedure is that of a sound car, whatever their size within reason: with the vent open a small
 * hole adds nothing, while filling the cap is off and the engine stands, and a wrong gain only scales what is not known.
 */
const ALIKE: Readonly<Partial<Record<ProcedureKind | 'unknown', readonly CauseId[]>>> = {
  'vacuum-draw': ['sensor_gain'],
  'engine-off': ['purge_stuck_closed', 'sensor_gain'],
  'purge-drive': ['leak', 'vent_leak', 'purge_leak', 'sensor_gain'],
  refuelling: [
    'leak',
    'gross_leak',
    'vent_leak',
    'purge_leak',
    'purge_stuck_open',
    'purge_stuck_closed',
    'sensor_gain',
  ],
};

/** Whether no recording can tell the cause from a sound car by its pressure. */
export function looksSound(procedures: readonly (ProcedureKind | 'unknown')[], cause: CauseId): boolean {
  return procedures.every((p) => ALIKE[p]?.includes(cause));
}

/** Causes that the procedure is commonly recorded for. Common practice, no source. */
const SOUGHT: Readonly<Partial<Record<ProcedureKind | 'unknown', readonly CauseId[]>>> = {
  'purge-drive': ['purge_stuck_closed', 'purge_stuck_open', 'canister_saturated', 'vent_restricted', 'gross_leak'],
  refuelling: ['vent_restricted', 'vent_stuck_closed', 'path_blocked', 'fill_valve_stuck_open'],
};
const SOUGHT_FACTOR = 1.5;
/** A hidden cause's prior relative to what it is otherwise. Judgement. */
const HIDDEN_FACTOR = 0.2;

/**
 * Engine-off tests run only once the engine-on test for large leaks has passed (public training article), so a cap or hose
 * that is off is rare in them. Judgement.
 */
const AFTER_PASSED_TEST: Readonly<Partial<Record<CauseId, number>>> = { gross_leak: 0.4 };

/** Factor on a cause's prior: hidden causes count less unless some recording can show them. */
export function selectionFactor(procedures: readonly (ProcedureKind | 'unknown')[], cause: CauseId): number {
  const shown = procedures.some((p) => !HIDDEN[p]?.includes(cause));
  const passed = procedures.every((p) => p === 'engine-off') ? (AFTER_PASSED_TEST[cause] ?? 1) : 1;
  const sought = procedures.some((p) => SOUGHT[p]?.includes(cause)) ? SOUGHT_FACTOR : 1;
  return passed * sought * (shown ? 1 : HIDDEN_FACTOR);
}
