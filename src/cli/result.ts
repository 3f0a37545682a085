/** `result`: enters what a step showed, and plans on from there. */
import { checkById } from '../checks/catalogue/all.ts';
import { jobStateFromStored, jobStateSchema } from '../checks/job-format.ts';
import type { JobState, Step } from '../checks/job-state.ts';
import { type CheckEntry, readEntry } from '../checks/read-entry.ts';
import { REPAIR_IDS, REPAIRS } from '../checks/repairs.ts';
import { SETUPS, type SetupId } from '../checks/setups.ts';
import { type Meant, whatNumbersMean } from '../checks/what-numbers-mean.ts';
import { EXIT } from './exit-codes.ts';
import { Failure } from './failure.ts';
import { readJsonFile } from './json-file.ts';
import { knownCheck, type PlanViewOptions, STATE_FORMAT, showPlan } from './plan.ts';

export interface ResultOptions extends PlanViewOptions {
  readonly state: string;
}

const isNumber = (text: string): boolean => text.includes('=');

/** "flow=0.46 L/min" by field, or the name of an outcome. */
function entryFrom(id: string, words: readonly string[]): CheckEntry {
  if (words.length > 0 && words.every(isNumber)) {
    return {
      numbers: Object.fromEntries(
        words.map((word) => [word.slice(0, word.indexOf('=')).trim(), word.slice(word.indexOf('=') + 1).trim()]),
      ),
    };
  }
  const { numbers, outcomes } = checkById(id);
  if (words.length === 0 || words.some(isNumber)) {
    const fields = numbers?.fields.map((field) => `"${field.id}=… ${field.unit}"`).join(' ');
    throw new Failure(EXIT.usage, `the result of ${id} is not clear`, {
      found: words.join(' ') || 'nothing',
      expected: `one of: ${outcomes.map((o) => o.id).join(', ')}${fields === undefined ? '' : `; or ${fields}`}`,
    });
  }
  return { outcome: words.join(' ') };
}

function stepFrom(id: string, words: readonly string[]): Step {
  const repair = REPAIR_IDS.find((name) => name === id);
  if (repair === undefined) {
    knownCheck(id);
    if (checkById(id).group === 'recording') {
      throw new Failure(EXIT.usage, `${id} is a recording: what it shows comes through the finding`, {
        advice: 'Add it to the recordings of "diagnose", and plan from the new finding.',
      });
    }
    const entry = entryFrom(id, words);
    const read = readEntry(id, entry);
    if (!read.ok) {
      throw new Failure(EXIT.input, `the result of ${id} cannot be taken`, {
        found: read.problems.map(({ text }) => text).join('; '),
        advice: 'Enter each number with its unit and sign, as in "pressure=10 inH2O".',
      });
    }
    return { kind: 'check', id, entry };
  }
  if (words.join(' ') !== 'not held') {
    throw new Failure(EXIT.usage, `a repair that held ends the troubleshooting`, {
      found: words.join(' ') || 'nothing',
      expected: `"not held" after the repair "${id}"`,
      advice: 'When it held, prove it: measure as before the repair, and ask "proof" or the job sheet.',
    });
  }
  return { kind: 'repair', id: repair };
}

/** What the numbers of a step come to; nothing for a choice. */
function meantBy(step: Step): readonly Meant[] {
  const read = step.kind === 'check' ? readEntry(step.id, step.entry) : undefined;
  return read?.ok === true && read.meaning !== undefined ? whatNumbersMean(read.meaning) : [];
}

/** Set-ups that a step has brought about stay. */
function setupsAfter(state: JobState, step: Step): readonly SetupId[] {
  const needed =
    step.kind === 'check' ? checkById(step.id).setups : REPAIRS.find((repair) => repair.id === step.id)!.setups;
  return SETUPS.filter((id) => state.setupsDone.includes(id) || needed.includes(id));
}

export async function resultCommand(id: string, words: readonly string[], options: ResultOptions): Promise<void> {
  const state = jobStateFromStored(readJsonFile(options.state, jobStateSchema, STATE_FORMAT).value);
  const step = stepFrom(id, words);
  const after = { ...state, steps: [...state.steps, step], setupsDone: setupsAfter(state, step) };
  await showPlan(after, options, [options.state], meantBy(step));
}
