import type { ProcedureKind } from '../recording/recording.ts';

/** The pressure that a procedure is judged by, as figures call it. */
export const pressureOf = (procedure: ProcedureKind | 'unknown'): string =>
  procedure === 'pump-run' ? 'pump pressure' : 'tank pressure';

export const upperFirst = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
