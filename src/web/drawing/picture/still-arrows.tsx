import type { ReactNode } from 'react';
import { lengthOf, pointAlong } from '../placement/geometry.ts';
import type { Scheme } from '../placement/scheme.ts';
import type { RunView } from '../state/run-view.ts';
import { FLOW_SEEN_KG_PER_S } from '../state/valve-state.ts';

interface Props {
  readonly scheme: Scheme;
  readonly view: RunView;
  readonly timeS: number;
  readonly flow: (kgPerS: number) => string;
}

/** Passages whose flow is told by a number; the bed's cells between them carry the same. */
const isTold = (passage: string): boolean => !passage.startsWith('bed.');

/** Flow without motion, for readers who asked for less of it and for paper: arrows, with numbers. */
export function StillArrows({ scheme, view, timeS, flow }: Props): ReactNode {
  view.moveTo(timeS);
  return (
    <g className="still" aria-hidden="true">
      {scheme.ways.map(({ passage, points }) => {
        const value = view.flowKgPerS(passage);
        if (Math.abs(value) < FLOW_SEEN_KG_PER_S || !isTold(passage)) return null;
        const middle = pointAlong(points, lengthOf(points) * 0.62);
        const degrees = (middle.angle * 180) / Math.PI + (value < 0 ? 180 : 0);
        const isUpright = Math.abs(Math.sin(middle.angle)) > 0.7;
        return (
          <g key={passage} className="flow-arrow">
            <path d="M-8 -7L9 0L-8 7Z" transform={`translate(${middle.x} ${middle.y}) rotate(${degrees})`} />
            <text
              x={middle.x + (isUpright ? 11 : 0)}
              y={middle.y + (isUpright ? 5 : -12)}
              textAnchor={isUpright ? 'start' : 'middle'}
              fontSize={13.5}
            >
              {flow(value)}
            </text>
          </g>
        );
      })}
    </g>
  );
}
