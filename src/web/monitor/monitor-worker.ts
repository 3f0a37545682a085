/** Holds recordings against conditions and plays engine-off tests in a thread of the browser's own. */
import type { MonitorConditions } from '../../readiness/conditions.ts';
import { type EngineOffOutlook, engineOffOutlook } from '../../readiness/engine-off-result.ts';
import { type AttemptResult, type EvaluateOptions, evaluateReadiness } from '../../readiness/evaluate.ts';
import type { EngineOffSituation } from '../../readiness/situation-after.ts';
import type { ChannelName, Recording } from '../../recording/recording.ts';
import type { Car } from '../../system/car.ts';

export interface Tasks {
  /** Keeps a recording under a name for the tasks that follow. */
  readonly keep: {
    readonly task: {
      readonly key: string;
      readonly label: string;
      readonly timeS: Float64Array;
      readonly channels: Readonly<Partial<Record<ChannelName, Float32Array>>>;
    };
    readonly value: null;
  };
  readonly evaluate: {
    readonly task: {
      readonly key: string;
      readonly conditions: MonitorConditions;
      readonly options: EvaluateOptions;
    };
    readonly value: { readonly attempts: readonly AttemptResult[]; readonly endS: number };
  };
  readonly outlook: {
    readonly task: { readonly car: Car; readonly situation: EngineOffSituation };
    readonly value: EngineOffOutlook;
  };
}
export type TaskName = keyof Tasks;
export type Question = {
  [Name in TaskName]: { readonly id: number; readonly name: Name; readonly task: Tasks[Name]['task'] };
}[TaskName];
export type Reply =
  | { readonly id: number; readonly value: Tasks[TaskName]['value'] }
  | { readonly id: number; readonly error: string };

const recordings = new Map<string, Recording>();

function answer(question: Question): Tasks[TaskName]['value'] {
  switch (question.name) {
    case 'keep': {
      const { key, label, timeS, channels } = question.task;
      const wide = Object.entries(channels).map(([name, values]) => [name, Float64Array.from(values)]);
      recordings.set(key, { label, timeS, channels: Object.fromEntries(wide) });
      return null;
    }
    case 'evaluate': {
      const { key, conditions, options } = question.task;
      const recording = recordings.get(key);
      if (recording === undefined) throw new Error(`no recording "${key}" is kept here`);
      return { attempts: evaluateReadiness(recording, conditions, options), endS: recording.timeS.at(-1) ?? 0 };
    }
    case 'outlook':
      return engineOffOutlook(question.task.car, question.task.situation);
  }
}

interface Port {
  onmessage: ((event: { readonly data: Question }) => void) | null;
  postMessage(reply: Reply): void;
}
const port = self as unknown as Port;

port.onmessage = ({ data }) => {
  try {
    port.postMessage({ id: data.id, value: answer(data) });
  } catch (error) {
    port.postMessage({ id: data.id, error: error instanceof Error ? error.message : String(error) });
  }
};
