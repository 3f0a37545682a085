import { PARTS, type PartId } from '../system/parts.ts';
import type { NetworkEquations } from './network-equations.ts';
import type { StepFailure } from './step-control.ts';

/** Why a simulation could not be carried to its end; nothing is thrown for it. */
export interface SimulationFailure {
  readonly reason: StepFailure['reason'];
  readonly words: string;
  readonly timeS: number;
  readonly stepS: number;
  /** The part whose state caused it. */
  readonly part: PartId | 'ledger';
  /** The quantity of the part, as `air mass of head`. */
  readonly quantity: string;
  readonly tryThis: string;
}

const WORDS: Readonly<Record<StepFailure['reason'], readonly [string, string]>> = {
  'step-too-small': [
    'the step needed for the tolerance is too small to go on',
    'look for a volume near zero or a passage far too wide at this part; otherwise loosen the tolerance',
  ],
  singular: [
    'the equations have no single solution here',
    'look for a space without any way to gain or lose gas, or a volume of zero, at this part',
  ],
  'not-finite': [
    'a quantity stopped being a number',
    'check the parameters of this part: volumes and temperatures above zero, fill below the shell volume',
  ],
  'too-many-steps': [
    'the number of steps allowed was used up',
    'allow more steps, loosen the tolerance, or look for a valve that flutters at this part',
  ],
};

/**
 * Turns an integrator's failure into one that names the part.
 *
 * @param equations the equations that were integrated
 * @param failure what the integrator says
 * @param timeS when [s]
 * @param stepS step that was tried [s]
 * @returns the failure in words, with the part
 */
export function explainFailure(
  equations: NetworkEquations,
  failure: StepFailure,
  timeS: number,
  stepS: number,
): SimulationFailure {
  const { layout, network } = equations;
  const node = layout.nodeOfRow[failure.component] ?? -1;
  const part = node >= 0 && node < network.spaces.length ? network.spaces[node]!.part : 'ledger';
  const quantity = layout.names[failure.component] ?? 'unknown quantity';
  const [what, tryThis] = WORDS[failure.reason];
  const place = part === 'ledger' ? 'the ledger' : PARTS[part].words;
  return {
    reason: failure.reason,
    words: `at ${timeS.toFixed(3)} s, ${quantity} (${place}): ${what}`,
    timeS,
    stepS,
    part,
    quantity,
    tryThis,
  };
}
