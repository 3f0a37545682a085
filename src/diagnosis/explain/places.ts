/** Where a fault can sit, and which places the recordings cannot tell apart. */
import type { PlaceProbability } from '../finding.ts';
import type { Weighed } from '../weighing/weighed.ts';

/** Forms whose probabilities are nearer than this factor are one group: the recordings do not part them. Judgement. */
const TOLD_APART = 5;

/**
 * The fit sees two spaces; places that open into the same space look alike, and a pipe of some millimetres makes the two
 * spaces alike for small holes.
 *
 * @param forms the forms of one cause with their probabilities
 */
export function placesFor(
  forms: readonly { readonly weighed: Weighed; readonly probability: number }[],
): PlaceProbability[] {
  const groups: { group: PlaceProbability['group'][number][]; probability: number; share: number }[] = [];
  for (const f of [...forms].sort((a, b) => b.probability - a.probability)) {
    const places = f.weighed.causes.flatMap((c) => c.places);
    if (places.length === 0) continue;
    const share = f.weighed.causes[0]!.share ?? 1;
    // prior shares taken out: only what the recordings say may part places
    const alike = groups.find((g) => g.probability / g.share < (TOLD_APART * f.probability) / share);
    if (alike) {
      for (const p of places) if (!alike.group.includes(p)) alike.group.push(p);
      alike.probability += f.probability;
      alike.share += share;
    } else groups.push({ group: [...new Set(places)], probability: f.probability, share });
  }
  return groups.map(({ group, probability }) => ({ group, probability }));
}
