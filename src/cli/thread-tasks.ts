/** Long sums that run in a thread of their own, so that the program hears Ctrl-C and can say how far it is. Plain data crosses. */
import type { JobState } from '../checks/job-state.ts';
import type { Plan } from '../checks/plan.ts';
import type { StoredSheet } from '../report/sheet.ts';
import type { SheetInputs } from '../server/finding/make-sheet.ts';
import type { Simulation } from '../simulation/simulate.ts';
import type { ScenarioFile } from './scenario-file.ts';

export interface ThreadTasks {
  readonly sheet: { readonly task: Omit<SheetInputs, 'onProgress'>; readonly value: StoredSheet };
  readonly simulate: { readonly task: ScenarioFile; readonly value: Simulation };
  readonly plan: {
    readonly task: { readonly state: JobState; readonly seconds: number; readonly recordings: boolean };
    readonly value: Plan;
  };
}
export type ThreadTaskName = keyof ThreadTasks;

export type FromThread<Value> =
  | { readonly kind: 'progress'; readonly fraction: number; readonly what: string }
  | { readonly kind: 'value'; readonly value: Value };
