/** The proof in English. */
import type { ProofText } from './text.ts';

export const PROOF_EN: ProofText = {
  verdict: {
    held: 'The repair held.',
    'not-held': 'The repair did not hold.',
    'not-proven': 'Not proven: it cannot yet be said whether the repair held.',
  },
  figures: {
    fault: (before, after) => `Probability of the repaired fault: ${before} before the repair, ${after} after it.`,
    limitMet: (percent, limit) => `What remains is smaller than ${limit} with a probability of ${percent}.`,
    madeDifference: (percent) => `The repair made a difference with a probability of ${percent}.`,
    anotherLeak: (percent) => `Another leak remains with a probability of ${percent}.`,
  },
  against: {
    'self-test failed': 'The car’s own test has run since the repair and failed.',
    'limit exceeded': (percent, limit) =>
      `What remains is larger than the limit of ${limit}: that it is met has a probability of ${percent} only.`,
    'no difference': (percent) =>
      `What remains is as large as before: that the repair made a difference has a probability of ${percent} only.`,
    'fault still there': (percent) => `The repaired fault is still there with a probability of ${percent}.`,
  },
  missing: {
    'no measurement before': 'The system was not measured before the repair, so there is nothing to compare with.',
    'no measurement after': 'The system has not been measured since the repair.',
    'limit not certain': (percent, limit) =>
      `That the limit of ${limit} is met: the probability is ${percent}, 95 % is asked for (judgement). Measure longer or again.`,
    'difference not certain': (percent) =>
      `That the repair made a difference: the probability is ${percent}, 95 % is asked for (judgement).`,
    'another leak not excluded': (percent) =>
      `That no other leak remains: one remains with a probability of ${percent}, at most 10 % is accepted (judgement).`,
    'fault not certain before': (percent) =>
      `That the repair made a difference: before it the fault had a probability of ${percent} only.`,
    'fault not certainly gone': (percent) =>
      `That the repaired fault is gone: it remains with a probability of ${percent}, at most 5 % is accepted (judgement).`,
    'conditions differ': (which) =>
      `That the two measurements can be compared: ${which} differed. Repeat the test as it was before.`,
    'conditions not known': (which) => `Whether both were measured alike; not written down on both sides: ${which}.`,
    'self-test not run': 'The car’s own test has not run since the repair.',
    'causes not covered': (causes) => `What was possible before the repair and this proof does not cover: ${causes}.`,
  },
  conditions: {
    method: 'kind of test',
    'fuel temperature': 'fuel temperature',
    'ambient temperature': 'ambient temperature',
    'fuel level': 'fuel level',
    volatility: 'volatility of the fuel',
  },
  values: (before, after) => `${before} before, ${after} after`,
  alike: { yes: 'alike', no: 'differs', unknown: 'not known' },
  sameFill: 'alike: no fuel was added in between',
  selfTest: { 'not run': 'has not run', passed: 'ran and passed', failed: 'ran and failed' },
  allCovered: 'All causes that were believed before the repair are covered.',
  budget: {
    title: 'Leak budget',
    lead: 'Holes side by side add by area, so areas are subtracted, not diameters.',
    where: 'where',
    whole: 'whole system',
    sum: 'sections together',
    removed: 'removed',
    repaired: (size) => `The repaired leak by itself, from isolation: ${size}.`,
    expectedRest: (size) => `Total before minus the repaired leak leaves ${size}.`,
    rest: {
      'as expected': 'What was measured after fits that.',
      'more than expected': 'More was measured after: look for a leak that the repair left or made.',
      'less than expected': 'Less was measured after: the repair removed more than the isolation had shown.',
    },
  },
};
