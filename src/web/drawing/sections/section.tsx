import { type ReactNode, useId } from 'react';
import './section.css';

interface Props {
  readonly title: string;
  /** Words of the numbered places, in their order. */
  readonly places: readonly string[];
  readonly children: (ids: { readonly solid: string; readonly soft: string }) => ReactNode;
  /** Where each number stands, and what it points at. */
  readonly numbers: readonly (readonly [number, number, number, number])[];
}

/** A section drawing of a part: cut metal and plastic hatched, rubber crossed, places numbered (after ISO 128). */
export function SectionDrawing({ title, places, numbers, children }: Props): ReactNode {
  const id = useId();
  const solid = `${id}-solid`;
  const soft = `${id}-soft`;
  return (
    <figure className="close-up">
      <svg role="img" aria-label={`${title}: ${places.join('; ')}`} viewBox="0 0 400 250">
        <defs>
          <pattern id={solid} width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <path d="M0 0V7" className="hatch" />
          </pattern>
          <pattern id={soft} width="5" height="5" patternUnits="userSpaceOnUse">
            <path d="M0 0L5 5M5 0L0 5" className="hatch" />
          </pattern>
        </defs>
        {children({ solid: `url(#${solid})`, soft: `url(#${soft})` })}
        {numbers.map(([x, y, toX, toY], i) => (
          <g key={`${x} ${y}`}>
            <path className="pointer" d={`M${x} ${y}L${toX} ${toY}`} />
            <circle className="dot" cx={toX} cy={toY} r={2.5} />
            <circle className="number" cx={x} cy={y} r={11} />
            <text x={x} y={y + 5} textAnchor="middle">
              {i + 1}
            </text>
          </g>
        ))}
      </svg>
      <figcaption>
        <ol>
          {places.map((place) => (
            <li key={place}>{place}</li>
          ))}
        </ol>
      </figcaption>
    </figure>
  );
}
