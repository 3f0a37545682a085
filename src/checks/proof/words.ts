/** A proof as sentences: which are said, in what order. The words are the language's, the figures the reader's. */
import type { RootCauseId } from '../root-causes.ts';
import type { ProofText } from '../text/text.ts';
import type { ComparedCondition } from './conditions.ts';
import type { Against, Missing, Proof } from './proof.ts';

/** How the reader of the sentences writes figures and names. */
export interface ProofSay {
  readonly percent: (probability: number) => string;
  readonly diameter: (mm: number) => string;
  readonly cause: (id: RootCauseId) => string;
  /** One side of a condition; undefined where it was not written down. */
  readonly condition: (condition: ComparedCondition, side: 'before' | 'after') => string | undefined;
  /** "a, b and c" */
  readonly list: (names: readonly string[]) => string;
}

export interface ProofSentences {
  readonly verdict: string;
  /** Why it did not hold. */
  readonly against: readonly string[];
  readonly figures: readonly string[];
  readonly missing: readonly string[];
}

/** "fuel level (41 % before, 80 % after)" */
function withValues(condition: ComparedCondition, text: ProofText, say: ProofSay): string {
  const name = text.conditions[condition.what];
  const [before, after] = [say.condition(condition, 'before'), say.condition(condition, 'after')];
  return before === undefined || after === undefined ? name : `${name} (${text.values(before, after)})`;
}

function againstInWords(item: Against, text: ProofText, say: ProofSay): string {
  const words = text.against;
  switch (item.code) {
    case 'self-test failed':
      return words[item.code];
    case 'limit exceeded':
      return words[item.code](say.percent(item.limitMet), say.diameter(item.limitMm));
    case 'no difference':
      return words[item.code](say.percent(item.madeDifference));
    case 'fault still there':
      return words[item.code](say.percent(item.probability));
  }
}

export function missingInWords(item: Missing, text: ProofText, say: ProofSay): string {
  const words = text.missing;
  switch (item.code) {
    case 'limit not certain':
      return words[item.code](say.percent(item.limitMet), say.diameter(item.limitMm));
    case 'difference not certain':
      return words[item.code](say.percent(item.madeDifference));
    case 'another leak not excluded':
      return words[item.code](say.percent(item.anotherLeak));
    case 'fault not certain before':
    case 'fault not certainly gone':
      return words[item.code](say.percent(item.probability));
    case 'conditions differ':
      return words[item.code](say.list(item.which.map((condition) => withValues(condition, text, say))));
    case 'conditions not known':
      return words[item.code](say.list(item.which.map(({ what }) => text.conditions[what])));
    case 'causes not covered':
      return words[item.code](
        say.list(item.causes.map(({ id, probability }) => `${say.cause(id)} (${say.percent(probability)})`)),
      );
    default:
      return words[item.code];
  }
}

export function proofInWords(proof: Proof, text: ProofText, say: ProofSay): ProofSentences {
  const { limitMet, madeDifference, anotherLeak, limitMm, otherFault } = proof;
  const figures = [
    ...(otherFault?.before === undefined || otherFault.after === undefined
      ? []
      : [text.figures.fault(say.percent(otherFault.before), say.percent(otherFault.after))]),
    ...(limitMet === undefined ? [] : [text.figures.limitMet(say.percent(limitMet), say.diameter(limitMm))]),
    ...(madeDifference === undefined ? [] : [text.figures.madeDifference(say.percent(madeDifference))]),
    ...(anotherLeak === undefined ? [] : [text.figures.anotherLeak(say.percent(anotherLeak))]),
  ];
  return {
    verdict: text.verdict[proof.verdict],
    against: proof.against.map((item) => againstInWords(item, text, say)),
    figures,
    missing: proof.missing.map((item) => missingInWords(item, text, say)),
  };
}
