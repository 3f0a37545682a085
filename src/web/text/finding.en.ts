/** The finding: verdict, causes, size, traces, evidence, what is open. */
import type { Finding } from '../../diagnosis/finding.ts';
import { ownerSentence, SIZE_NOTES } from '../../report/sentences.ts';
import { evidenceInWords } from '../../report/words.ts';

export const FINDING_EN = {
  needsRecording: 'A finding needs a recording: drop one above.',
  needsUsed: 'No recording counts for the finding: tick one above.',
  needsCar: 'A finding needs the layout of the car: choose it above. Everything else may stay open.',
  none: 'No finding yet.',
  make: 'Make the finding',
  again: 'Make it anew',
  outdated: 'Outdated: recordings, car, complaint, codes or checks have changed since, or the program has.',
  outdatedShort: 'outdated',
  running: 'The finding is being made',
  waiting: 'The finding waits its turn',
  cancel: 'Stop the finding',
  cancelled: 'The finding was stopped. Nothing was changed.',
  interrupted: 'The finding was interrupted',
  interruptedWords: 'The program ended while it was being made. Nothing of it was kept; the job is as it was.',
  startAgain: 'Start it again',
  putAside: 'Leave it',
  failed: 'The finding could not be made',
  older: 'Findings of this job',
  madeAt: (when: string) => `made ${when}`,
  newest: 'newest',
  madeFrom: (count: number, program: string) =>
    `${count === 1 ? 'From one recording' : `From ${count} recordings together`}, by ${program}`,
  owner: ownerSentence as (finding: Finding) => string,
  sentence: {
    cannotTell: 'Cannot tell from these recordings.',
    cannotTellBecause: (why: string) => `Cannot tell from these recordings. ${why}`,
    noFault: (isSure: boolean, percent: string) =>
      isSure
        ? `No fault seen (${percent}).`
        : `No fault seen, but a small or hidden one is not ruled out (${percent}).`,
    bound: (size: string) => `Any hole is smaller than ${size} with 95 % probability.`,
    at: (isOneOfSeveral: boolean): string => (isOneOfSeveral ? 'most likely at' : 'at'),
    probability: (percent: string, certainty: string) => `Probability ${percent}, ${certainty}.`,
    rival: (name: string, percent: string) => `Nearly as good: ${name} (${percent}).`,
  },
  or: 'or',
  causes: {
    title: 'What could it be',
    rest: (count: number) => `everything else (${count} causes)`,
    pairs: 'Two faults at once',
    pair: (a: string, b: string) => `${a} together with ${b}`,
    alike: (places: string) => `${places}: these recordings cannot tell them apart`,
    placesOf: (cause: string) => `Where ${cause} sits`,
    none: 'No cause could be weighed.',
  },
  size: {
    title: 'How large is the hole',
    label: (interval: string, limits: string) =>
      `Equivalent diameter ${interval}, 90 % interval, on a logarithmic scale. Limits: ${limits}.`,
    over: (limit: string, percent: string) => `Over ${limit} with probability ${percent}.`,
    convention:
      'Equivalent diameter: the thin sharp-edged round hole, discharge coefficient 0.61, that passes the same flow. Holes add by area: this is the total of all of them.',
    limitSource: (label: string, source: string) => `${label}: ${source}.`,
    fromMemory: 'from memory',
    unknown: 'These recordings do not size a hole.',
    bound: 'No hole was seen; the bar shows what could hide in these recordings.',
    notes: SIZE_NOTES,
  },
  trace: {
    title: 'Recorded and modelled',
    recording: 'Recording',
    cause: 'Modelled with',
    rival: 'Compare with (dashed)',
    noRival: 'nothing',
    recorded: 'recorded',
    modelled: 'modelled',
    rivalName: (name: string) => `modelled: ${name}`,
    band: '90 % band, half',
    difference: 'recorded minus modelled',
    pressures: {
      'tank pressure': 'tank pressure',
      'pump pressure': 'pump pressure',
    } as Record<string, string>,
    label: (recording: string, cause: string) => `${recording}, recorded and modelled with ${cause}`,
    key: 'Dots: recorded. Line: modelled, with its 90 % band. Below: recorded minus modelled; where the record leaves the band for several readings in a row the lane is shaded and marked at its foot.',
    fit: (cause: string, rms: string) =>
      `With “${cause}” the model differs from the record by ${rms} (root mean square).`,
    inside: 'The record stays inside the band throughout, but for single readings.',
    parts: (spans: string) => `They part ${spans}.`,
    span: (from: string, to: string, phase: string, by: string, isAbove: boolean) =>
      `from ${from} to ${to} (${phase}; the record lies up to ${by} ${isAbove ? 'above' : 'below'})`,
    more: (count: number) => `and ${count} more times`,
    none: 'There is no modelled trace to lay over the record.',
    loading: 'The traces are being drawn …',
    purge: 'purge duty',
    vent: 'vent valve',
  },
  evidence: {
    title: 'What each phase says',
    words: (first: string, rival: string) => `For “${first}” and against its best rival, “${rival}”.`,
    alone: (first: string) => `For or against “${first}”.`,
    silent:
      'No phase by itself tells the first cause from its best rival; what parts them stands above or in what is usual.',
    strength: evidenceInWords,
    odds: (odds: string) => `odds ${odds}`,
    over: (odds: string) => `over ${odds}`,
    ratio: (ratio: string, isFor: boolean) => (isFor ? `${ratio} to 1` : `1 to ${ratio}`),
    inRecording: (phase: string, recording: string) => `${phase}, ${recording}`,
  },
  reasons: {
    for: 'Speaks for it',
    against: 'Speaks against it',
    notProven: 'What is not proven',
    next: 'What to record next',
    warnings: 'What was assumed or left out',
    whichPlace: (places: string) => `Which of ${places} it is: they look alike in these recordings.`,
    rival: (name: string, percent: string) => `Not excluded: ${name} (${percent}).`,
    repair: 'That a repair holds: repeat the same recording after it and compare.',
    several: 'Whether the hole is one or several: the size is the total, and holes add by area.',
    asleep:
      'Anything that did not happen while recording: a fault that comes with heat, movement or a full tank may be asleep.',
  },
  /** Sentences that the program makes in English, in this language. */
  said: (sentence: string): string => sentence,
};
