/** Where a fault can sit, and which places the recordings cannot tell apart. */
import type { PlaceProbability } from '../finding.ts';
import type { Weighed } from '../weigh-causes.ts';

/**
 * The fit sees two spaces; places that open into the same space look alike, and a pipe of some millimetres makes the two
 * spaces alike for small holes. So a cause's places form one group unless the model itself parts them.
 */
export function placesFor(weighed: Weighed, probability: number): PlaceProbability[] {
  const group = weighed.causes.flatMap((c) => c.places);
  return group.length === 0 ? [] : [{ group: [...new Set(group)], probability }];
}
