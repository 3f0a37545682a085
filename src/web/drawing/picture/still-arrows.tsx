import type { ReactNode } from 'react';
import { arrowOf } from '../placement/arrows.ts';
import type { Scheme } from '../placement/scheme.ts';
import type { RunView } from '../state/run-view.ts';
import { FLOW_SAID_KG_PER_S } from '../state/valve-state.ts';

interface Props {
  readonly scheme: Scheme;
  readonly view: RunView;
  readonly timeS: number;
}

/** Flow without motion, for readers who asked for less of it and for paper: arrows; their numbers are labels. */
export function StillArrows({ scheme, view, timeS }: Props): ReactNode {
  view.moveTo(timeS);
  return scheme.ways.map(({ passage, points }) => {
    const value = view.flowKgPerS(passage);
    if (Math.abs(value) < FLOW_SAID_KG_PER_S || passage.startsWith('bed.')) return null;
    const { x, y, angle } = arrowOf(points);
    const degrees = (angle * 180) / Math.PI + (value < 0 ? 180 : 0);
    return (
      <path
        key={passage}
        className="flow-arrow"
        d="M-8 -7L9 0L-8 7Z"
        transform={`translate(${x} ${y}) rotate(${degrees})`}
      />
    );
  });
}
