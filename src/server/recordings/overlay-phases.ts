/** Phases given by hand over found ones: where the given ones leave time open, the found ones stand. */
import type { Phase } from '../../recording/recording.ts';

export function overlayPhases(found: readonly Phase[], given: readonly Phase[]): readonly Phase[] {
  const fromS = found[0]?.fromS;
  const toS = found.at(-1)?.toS;
  if (fromS === undefined || toS === undefined || given.length === 0) return found;
  const edges = new Set([...found, ...given].flatMap((phase) => [phase.fromS, phase.toS]));
  const times = [...edges].filter((t) => t >= fromS && t <= toS).sort((a, b) => a - b);
  const overlaid: Phase[] = [];
  for (let i = 1; i < times.length; i++) {
    const [start, end] = [times[i - 1]!, times[i]!];
    const holds = ({ fromS, toS }: Phase) => fromS <= start && toS >= end;
    // Of two given ones over the same time the later in the list counts, as in the finding.
    const kind = (given.findLast(holds) ?? found.find(holds))?.kind ?? 'rest';
    const last = overlaid.at(-1);
    if (last?.kind === kind) overlaid[overlaid.length - 1] = { ...last, toS: end };
    else overlaid.push({ kind, fromS: start, toS: end });
  }
  return overlaid;
}
