/** Phases as a person corrects them: whole cover of the recording, boundaries that can be moved. */
import type { Phase, PhaseKind } from '../../../recording/recording.ts';

/** Phases as a gapless row from the first to the last sample: what `findPhases` gives. */
export type PhaseRow = readonly Phase[];

/** The range a boundary may be moved in: between its neighbours, with `leastS` left of each phase. */
export function boundaryRange(phases: PhaseRow, boundary: number, leastS: number): readonly [number, number] {
  const before = phases[boundary]!;
  const after = phases[boundary + 1]!;
  const low = before.fromS + leastS;
  const high = after.toS - leastS;
  return low <= high ? [low, high] : [before.toS, before.toS];
}

/** Boundary `k` parts phase `k` from phase `k + 1`. */
export function moveBoundary(phases: PhaseRow, boundary: number, toS: number, leastS: number): PhaseRow {
  const [low, high] = boundaryRange(phases, boundary, leastS);
  const at = Math.min(high, Math.max(low, toS));
  return phases.map((phase, k) => {
    if (k === boundary) return { ...phase, toS: at };
    if (k === boundary + 1) return { ...phase, fromS: at };
    return phase;
  });
}

export const rename = (phases: PhaseRow, index: number, kind: PhaseKind): PhaseRow =>
  phases.map((phase, k) => (k === index ? { ...phase, kind } : phase));

/** Cuts a phase in two at its middle; the second half keeps the kind until a person names it. */
export function split(phases: PhaseRow, index: number): PhaseRow {
  const phase = phases[index]!;
  const middle = (phase.fromS + phase.toS) / 2;
  return [
    ...phases.slice(0, index),
    { ...phase, toS: middle },
    { ...phase, fromS: middle },
    ...phases.slice(index + 1),
  ];
}

/** Takes a phase out; the one before it takes its time, or the one after when it was the first. */
export function remove(phases: PhaseRow, index: number): PhaseRow {
  if (phases.length < 2) return phases;
  const gone = phases[index]!;
  return phases
    .map((phase, k) => {
      if (k === index - 1) return { ...phase, toS: gone.toS };
      if (index === 0 && k === 1) return { ...phase, fromS: gone.fromS };
      return phase;
    })
    .filter((_, k) => k !== index);
}
