import type { ReactNode } from 'react';
import { SectionDrawing } from './section.tsx';
import { springPath } from './solenoid.tsx';

interface Props {
  readonly title: string;
  readonly places: readonly string[];
}

const GRAINS: readonly (readonly [number, number])[] = Array.from({ length: 154 }, (_, i) => {
  const column = i % 14;
  const row = Math.floor(i / 14);
  return [92 + column * 16 + (row % 2) * 8, 58 + row * 14] as const;
}).filter(([x]) => Math.abs(x - 200) > 12 && x < 314);

/** Canister: two chambers around a wall, so that gas goes down one and up the other. */
export function CanisterSection({ title, places }: Props): ReactNode {
  return (
    <SectionDrawing
      title={title}
      places={places}
      numbers={[
        [40, 26, 104, 26],
        [128, 14, 152, 22],
        [360, 26, 272, 22],
        [30, 120, 110, 128],
        [372, 120, 206, 100],
        [30, 206, 96, 206],
        [372, 206, 306, 220],
      ]}
    >
      {({ solid, soft }) => (
        <>
          <path className="cut" fill={solid} fillRule="evenodd" d="M70 34H330V240H70ZM82 46V228H318V46Z" />
          <rect className="cut" fill={solid} x={195} y={46} width={10} height={150} />
          {[96, 144, 264].map((x) => (
            <path key={x} className="white" d={`M${x} 46V8H${x + 18}V46`} />
          ))}
          {GRAINS.map(([x, y]) => (
            <circle key={`${x} ${y}`} className="thin" cx={x} cy={y} r={5} />
          ))}
          {[82, 205].map((x) => (
            <g key={x}>
              <rect className="cut" fill={soft} x={x} y={46} width={x === 82 ? 113 : 113} height={6} />
              <rect className="cut" fill={soft} x={x} y={200} width={113} height={7} />
            </g>
          ))}
          <path className="thin" d={springPath(140, 207, 228, 2)} />
          <path className="thin" d={springPath(262, 207, 228, 2)} />
          <path className="way" d="M105 12V60M138 190V217H262V190M273 60V12" />
        </>
      )}
    </SectionDrawing>
  );
}
