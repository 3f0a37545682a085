/**
 * Symbols after ISO 14617 and ISO 1219, around the origin, flow from left to right. What moves or fills carries a `data-`
 * name that the painter knows.
 */
import type { ReactNode } from 'react';
import type { Figure } from '../placement/scheme.ts';

const TURN = { 0: 0, 1: 90, 2: 180, 3: -90 } as const;

/** Two-way valve: two triangles; a coil with its slash above says that a current moves it. */
function Valve({ figure, half: v }: { readonly figure: Figure; readonly half: number }): ReactNode {
  const h = v * 0.72;
  return (
    <g className="valve" data-valve={figure.passage}>
      <path className="gap" d={`M${-v} 0H${v}`} />
      <path className="body" d={`M${-v} ${-h}L0 0L${-v} ${h}ZM${v} ${-h}L0 0L${v} ${h}Z`} />
      {figure.coil && (
        <>
          <path className="pen" d={`M0 0V${-v * 1.15}`} />
          <rect className="coil" x={-v * 0.62} y={-v * 2.2} width={v * 1.24} height={v * 1.05} />
          <path className="pen" d={`M${-v * 0.62} ${-v * 1.15}L${v * 0.62} ${-v * 2.2}`} />
        </>
      )}
    </g>
  );
}

/** Check valve: a ball that the flow lifts from its seat. */
function Check({ figure, half: v }: { readonly figure: Figure; readonly half: number }): ReactNode {
  return (
    <g className="valve" data-valve={figure.passage}>
      <path className="gap" d={`M${-v} 0H${v}`} />
      <path className="pen thick" d={`M${v * 0.35} ${-v * 0.7}L${-v * 0.5} 0L${v * 0.35} ${v * 0.7}`} />
      <circle className="ball" cx={v * 0.12} cy={0} r={v * 0.36} data-ball={figure.passage} />
    </g>
  );
}

function Cap({ figure }: { readonly figure: Figure }): ReactNode {
  return (
    <g>
      <g className="lid" data-lid={figure.passage}>
        <path className="solid" d="M-16 -5V-12Q-16 -14 -14 -14H14Q16 -14 16 -12V-5Z" />
        <path className="body plain" d="M-9 -5H9V4H-9Z" />
      </g>
      <path className="pen thick" d="M-14 1H-10V14M14 1H10V14" />
    </g>
  );
}

/** Two flaps on springs, one behind the other. */
function Flap({ figure }: { readonly figure: Figure }): ReactNode {
  return (
    <g>
      <path className="pen thick" d="M-15 -12V14M15 -12V14" />
      <path className="pen thick" data-flap={figure.passage} d="M-15 -8H14" />
      <path className="pen thick" data-flap={figure.passage} d="M-15 4H14" />
      <circle className="solid" cx={-15} cy={-8} r={2.5} />
      <circle className="solid" cx={-15} cy={4} r={2.5} />
    </g>
  );
}

function Inner({ figure, half }: { readonly figure: Figure; readonly half: number }): ReactNode {
  const { box } = figure;
  switch (figure.kind) {
    case 'valve':
      return <Valve figure={figure} half={half} />;
    case 'check':
      return <Check figure={figure} half={half} />;
    case 'filter':
      return (
        <>
          <path className="body plain" d="M-12 0L0 -12L12 0L0 12Z" />
          <path className="pen dashed" d="M0 -12V12" />
        </>
      );
    case 'orifice':
      return (
        <>
          <path className="gap" d={`M${-half} 0H${half}`} />
          <path className="pen thick" d="M-8 -11L0 -3L8 -11M-8 11L0 3L8 11" />
        </>
      );
    case 'pump':
      return (
        <g data-valve={figure.passage}>
          <circle className="body plain" r={15} />
          <path className="pen" d="M15 0L1 -11M15 0L1 11M1 -11V11" />
        </g>
      );
    case 'jet-pump':
      return <path className="body plain" d="M-12 -9L-2 -3L12 -8V8L-2 3L-12 9Z" />;
    case 'air':
      return <path className="body plain" d="M-6 -7L6 0L-6 7Z" />;
    case 'flange':
      return <rect className="solid" x={-box.w / 2} y={-box.h / 2} width={box.w} height={box.h} />;
    case 'cap':
      return <Cap figure={figure} />;
    case 'flap':
      return <Flap figure={figure} />;
    default:
      return null;
  }
}

/** Fittings in the tank's top: a boss, and in the cage below it a float or a ball. */
function Fitting({ figure }: { readonly figure: Figure }): ReactNode {
  const { at, kind } = figure;
  return (
    <g transform={`translate(${at.x} ${at.y})`}>
      <path className="pen thick" d="M-12 2V-9H-6M12 2V-9H6" />
      <path className="pen dashed" d="M-11 2V33M11 2V33" />
      <path className="pen" d="M-11 33H11" />
      {kind === 'rollover' ? (
        <circle className="solid" cy={26} r={6} />
      ) : (
        <g data-float={figure.space} data-float-stuck={figure.passage}>
          <rect className="body plain" x={-8} y={0} width={16} height={12} rx={3} />
          <path className="pen" d="M0 0V-5" />
        </g>
      )}
    </g>
  );
}

export function PartSymbol({
  figure,
  half,
  nameSize,
}: {
  readonly figure: Figure;
  readonly half: number;
  readonly nameSize: number;
}): ReactNode {
  const { at, box, kind } = figure;
  if (kind === 'canister' || kind === 'tank') return null;
  if (kind === 'float-valve' || kind === 'rollover') return <Fitting figure={figure} />;
  if (kind === 'sensor') {
    return (
      <g>
        <circle className="body plain" cx={at.x} cy={at.y} r={box.w / 2} />
        <text className="letter" x={at.x} y={at.y + nameSize * 0.36} textAnchor="middle" fontSize={nameSize}>
          {figure.letter}
        </text>
      </g>
    );
  }
  if (kind === 'source') {
    return (
      <>
        <rect className="vessel" data-space={figure.space} x={box.x} y={box.y} width={box.w} height={box.h} />
        <rect className="plate" x={box.x + 7} y={box.y + 5} width={box.w - 14} height={box.h - 10} />
      </>
    );
  }
  return (
    <g transform={`translate(${at.x} ${at.y}) rotate(${TURN[figure.turn]})`}>
      <Inner figure={figure} half={half} />
    </g>
  );
}
