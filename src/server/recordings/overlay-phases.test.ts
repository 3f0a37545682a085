import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { findPhases } from '../../recording/phases.ts';
import { PHASES, type Phase } from '../../recording/recording.ts';
import { overlayPhases } from './overlay-phases.ts';

const FOUND: readonly Phase[] = [
  { kind: 'baseline', fromS: 0, toS: 10 },
  { kind: 'draw', fromS: 10, toS: 25 },
  { kind: 'hold', fromS: 25, toS: 60 },
];

test('nothing given, nothing changed', () => {
  expect(overlayPhases(FOUND, [])).toEqual(FOUND);
});

test('a border that was dragged moves it for both neighbours', () => {
  expect(overlayPhases(FOUND, [{ kind: 'draw', fromS: 10, toS: 30 }])).toEqual([
    { kind: 'baseline', fromS: 0, toS: 10 },
    { kind: 'draw', fromS: 10, toS: 30 },
    { kind: 'hold', fromS: 30, toS: 60 },
  ]);
});

test('what lies outside the recording is cut', () => {
  expect(overlayPhases(FOUND, [{ kind: 'release', fromS: 50, toS: 90 }]).at(-1)).toEqual({
    kind: 'release',
    fromS: 50,
    toS: 60,
  });
});

const SECONDS = 20;
const phase = fc
  .tuple(fc.constantFrom(...PHASES), fc.integer({ min: -3, max: SECONDS }), fc.integer({ min: 1, max: SECONDS }))
  .map(([kind, fromS, length]): Phase => ({ kind, fromS, toS: fromS + length }));

test.prop([fc.array(phase, { maxLength: 4 })])('the same as the finding, where borders lie on samples', (given) => {
  const timeS = Float64Array.from({ length: SECONDS + 1 }, (_, i) => i);
  const tankPressureGaugePa = timeS.map((t) => -t);
  const recording = { timeS, channels: { tankPressureGaugePa }, label: 'x' };
  const unknown = { kind: 'unknown', reasons: [] } as const;
  const inFinding = findPhases(recording, given, unknown);
  const shown = overlayPhases(findPhases(recording, [], unknown), given);
  const at = (phases: readonly Phase[], t: number) => phases.find(({ fromS, toS }) => fromS <= t && t < toS)?.kind;
  for (let t = 0.5; t < SECONDS; t++) expect(at(shown, t)).toBe(at(inFinding, t));
});
