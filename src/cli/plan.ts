/** `plan`: the next step towards a proven repair, and why. */

import { CHECKS, checkById } from '../checks/catalogue/all.ts';
import type { CircumstanceId } from '../checks/circumstances.ts';
import { jobStateFromStored, jobStateSchema, storedJobState } from '../checks/job-format.ts';
import { type JobState, NEW_JOB } from '../checks/job-state.ts';
import type { Plan } from '../checks/plan.ts';
import { EN } from '../checks/text/en.ts';
import type { Meant } from '../checks/what-numbers-mean.ts';
import { COMPLAINTS as ALL_COMPLAINTS, type Complaint } from '../diagnosis/priors/root-causes.ts';
import { findingFromStored } from '../report/finding-format.ts';
import { storedSheetSchema } from '../report/sheet.ts';
import { carSchema } from '../system/car.ts';
import { COMPLAINTS, type ComplaintWord } from './complaints.ts';
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { readJsonFile } from './json-file.ts';
import { printJson, printText, remark } from './output.ts';
import { cautionsOfStep, meantInWords, planInWords, stepName } from './plan-words.ts';
import { runInThread } from './thread.ts';
import { refuseOverwritingInput, writeWhole } from './write-whole.ts';

export interface PlanViewOptions {
  readonly seconds: number;
  readonly recordings?: boolean;
  readonly acknowledge?: boolean;
  readonly out?: string;
  readonly json?: boolean;
}

export interface PlanOptions extends PlanViewOptions {
  readonly finding?: string;
  readonly car?: string;
  readonly state?: string;
  readonly codes?: readonly string[];
  readonly complaint?: ComplaintWord;
  readonly known?: readonly CircumstanceId[];
  readonly without?: readonly string[];
  readonly moneyWeight?: number;
  readonly set?: Readonly<Record<string, number>>;
}

export const STATE_FORMAT = 'vaporwright-troubleshooting-1';

const isComplaint = (text: string | undefined): text is Complaint =>
  ALL_COMPLAINTS.some((complaint) => complaint === text);

function fromFinding(file: string): JobState {
  const sheet = readJsonFile(file, storedSheetSchema, 'vaporwright-finding-1').value;
  return {
    ...NEW_JOB,
    layout: sheet.car.layout,
    complaints: isComplaint(sheet.complaint) ? [sheet.complaint] : [],
    codes: sheet.codes,
    finding: findingFromStored(sheet.finding),
  };
}

function startState({ finding, car, state }: PlanOptions): JobState {
  if ([finding, car, state].filter((file) => file !== undefined).length !== 1) {
    throw new Failure(EXIT.usage, 'it is not clear what to plan for', {
      expected: 'one of --finding FILE, --state FILE, or --car FILE (with --codes or --complaint)',
      advice: 'Try: vaporwright plan --finding finding.json',
    });
  }
  if (finding !== undefined) return fromFinding(finding);
  if (state !== undefined) return jobStateFromStored(readJsonFile(state, jobStateSchema, STATE_FORMAT).value);
  return { ...NEW_JOB, layout: readJsonFile(car!, carSchema, 'vaporwright-car-1').value.layout };
}

export async function planCommand(options: PlanOptions): Promise<void> {
  const start = startState(options);
  for (const id of options.without ?? []) knownCheck(id);
  const state: JobState = {
    ...start,
    codes: [...new Set([...start.codes, ...(options.codes ?? [])])],
    complaints: [...start.complaints, ...(options.complaint === undefined ? [] : [COMPLAINTS[options.complaint]])],
    circumstances: [...new Set([...start.circumstances, ...(options.known ?? [])])],
    leftOut: [...new Set([...start.leftOut, ...(options.without ?? [])])],
    goal: options.moneyWeight === undefined ? start.goal : { moneyWeight: options.moneyWeight },
    changes: { ...start.changes, ...options.set },
  };
  await showPlan(state, options, [options.finding, options.car, options.state]);
}

/**
 * Also what `result` ends with.
 *
 * @param entered what the numbers of the result come to
 */
export async function showPlan(
  state: JobState,
  options: PlanViewOptions,
  inputs: readonly (string | undefined)[],
  entered: readonly Meant[] = [],
): Promise<void> {
  const { out } = options;
  if (out !== undefined)
    refuseOverwritingInput(
      [out],
      inputs.flatMap((file) => (file === undefined ? [] : [file])),
    );
  const made = await planned(state, options);
  if (out !== undefined) writeWhole([{ path: out, content: `${JSON.stringify(storedJobState(state), null, 2)}\n` }]);
  if (options.json === true) printJson({ ...machinePlan(state, made, options.acknowledge === true), entered });
  else printText([...meantInWords(entered), planInWords(made, options.acknowledge === true)].join('\n'));
  if (out !== undefined) remark(`Written: ${out}`);
}

async function planned(state: JobState, { seconds, recordings = false }: PlanViewOptions): Promise<Plan> {
  try {
    return await runInThread('plan', { state, seconds, recordings });
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    throw new Failure(EXIT.input, 'the plan cannot be made', {
      found: error.message,
      advice: 'Correct the step, figure or check that is named.',
    });
  }
}

export function knownCheck(id: string): void {
  try {
    checkById(id);
  } catch {
    throw new Failure(EXIT.usage, `there is no check "${id}"`, {
      found: id,
      expected: `one of ${CHECKS.map((check) => check.id).join(', ')}`,
    });
  }
}

function machinePlan(state: JobState, made: Plan, acknowledged: boolean): object {
  const { next } = made;
  const cautions = cautionsOfStep(next);
  const check = next.kind === 'check' ? checkById(next.id) : undefined;
  const { expansions: _, ...rest } = made;
  return {
    schema: 'vaporwright-plan-1',
    ...rest,
    name: stepName(next),
    cautions,
    steps: check && (acknowledged || cautions.length === 0) ? EN.checks[check.id]!.steps : null,
    fields: (check?.numbers?.fields ?? []).map(({ id, unit, optional }) => ({ id, unit, optional: optional ?? false })),
    outcomes: check ? check.outcomes.map(({ id }) => id) : ['held', 'not held'],
    state: storedJobState(state),
  };
}
