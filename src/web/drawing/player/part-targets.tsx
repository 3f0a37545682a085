import { type KeyboardEvent, type ReactNode, useMemo, useRef } from 'react';
import type { PartId } from '../../../system/parts.ts';
import { useText } from '../../text/language.ts';
import { type Box, grow } from '../placement/geometry.ts';
import type { Scheme } from '../placement/scheme.ts';
import type { RunView } from '../state/run-view.ts';
import { stateOf } from './state-words.ts';
import { useFormats } from './use-formats.ts';

interface Target {
  readonly part: PartId;
  readonly box: Box;
  readonly labelId: string;
}

/** Smallest side of what can be touched. */
const LEAST = 40;

const touchable = (box: Box): Box =>
  grow(
    {
      ...box,
      x: box.x - Math.max(0, (LEAST - box.w) / 2),
      y: box.y - Math.max(0, (LEAST - box.h) / 2),
      w: Math.max(LEAST, box.w),
      h: Math.max(LEAST, box.h),
    },
    0,
  );

/** Every part once, in reading order; symbols before the long lines between them. */
export function targetsOf(scheme: Scheme): readonly Target[] {
  const out = new Map<PartId, Target>();
  const large = scheme.figures.filter((f) => f.kind === 'tank' || f.kind === 'canister');
  const small = scheme.figures.filter((f) => f.kind !== 'tank' && f.kind !== 'canister' && f.kind !== 'air');
  const add = (part: PartId, box: Box, labelId: string = part): void => {
    if (!out.has(part)) out.set(part, { part, box: touchable(box), labelId });
  };
  // Large areas first, so that the small ones lie on top of them.
  for (const f of large) add(f.part, f.box);
  const bed = scheme.cells;
  if (bed.length > 0) {
    const [first, last] = [bed[0]!, bed.at(-1)!];
    add(
      'carbonBed',
      { x: first.x + 4, y: first.y + 18, w: last.x + last.w - first.x - 8, h: first.h - 36 },
      'canister',
    );
  }
  for (const area of scheme.touch) add(area.part, area.box);
  for (const f of small)
    add(f.part, f.kind === 'sensor' && f.letter === 'P' ? f.box : f.box, f.kind === 'sensor' ? f.id : f.part);
  return [...out.values()];
}

interface Props {
  readonly scheme: Scheme;
  readonly view: RunView | undefined;
  readonly timeS: number;
  readonly chosen: PartId | undefined;
  readonly onChoose: (part: PartId) => void;
}

/** What can be chosen with mouse, finger or keys: one stop for Tab, arrows go from part to part. */
export function PartTargets({ scheme, view, timeS, chosen, onChoose }: Props): ReactNode {
  const text = useText();
  const formats = useFormats();
  const group = useRef<SVGGElement>(null);
  const targets = useMemo(() => targetsOf(scheme), [scheme]);
  const order = useMemo(
    () => [...targets].sort((a, b) => a.box.y + a.box.x / 10 - (b.box.y + b.box.x / 10)),
    [targets],
  );
  const stop = order.find((t) => t.part === chosen)?.part ?? order[0]?.part;
  view?.moveTo(timeS);

  const onKey = (event: KeyboardEvent<SVGElement>, part: PartId): void => {
    const at = order.findIndex((t) => t.part === part);
    const step =
      event.key === 'ArrowRight' || event.key === 'ArrowDown'
        ? 1
        : event.key === 'ArrowLeft' || event.key === 'ArrowUp'
          ? -1
          : 0;
    if (step !== 0) {
      event.preventDefault();
      const next = order[(at + step + order.length) % order.length]!;
      group.current?.querySelector<SVGElement>(`[data-target="${next.part}"]`)?.focus();
    } else if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onChoose(part);
    }
  };

  return (
    <g ref={group}>
      {targets.map(({ part, box, labelId }) => {
        const name = text.drawing.parts[part].replaceAll('\u00ad', '');
        const state = view === undefined ? '' : stateOf(view, labelId, text.drawing, formats);
        return (
          // biome-ignore lint/a11y/useSemanticElements: SVG has no button of its own
          <rect
            key={part}
            className="target"
            role="button"
            data-target={part}
            tabIndex={part === stop ? 0 : -1}
            aria-label={state === '' ? name : `${name}, ${state}`}
            aria-pressed={part === chosen}
            x={box.x}
            y={box.y}
            width={box.w}
            height={box.h}
            onClick={() => onChoose(part)}
            onKeyDown={(event) => onKey(event, part)}
          />
        );
      })}
    </g>
  );
}
