import type { ReactNode } from 'react';

/** The upper half that purge and vent valve share: coil around a plunger, spring, plug. */
export function Solenoid({ solid, lift }: { readonly solid: string; readonly lift: number }): ReactNode {
  return (
    <>
      <path className="axis" d="M200 8V244" />
      <path className="cut" fill={solid} d="M120 20H280V34H120ZM120 34H130V122H120ZM270 34H280V122H270Z" />
      {[136, 222].map((x) => (
        <g key={x}>
          <rect className="white" x={x} y={40} width={42} height={72} />
          <path className="thin" d={`M${x} 40L${x + 42} 112M${x + 42} 40L${x} 112`} />
        </g>
      ))}
      <path className="cut" fill={solid} d="M188 34H212V58H188Z" />
      <path className="thin" d={springPath(200, 58, 84 - lift, 5)} />
      <rect className="white" x={188} y={84 - lift} width={24} height={62} />
      <path className="outline" d="M280 52H306V78H280M306 58H316M306 72H316" />
    </>
  );
}

/** A coil spring in section. */
export function springPath(x: number, top: number, bottom: number, turns: number): string {
  const step = (bottom - top) / (2 * turns);
  let d = `M${x - 8} ${top}`;
  for (let i = 1; i <= 2 * turns; i++) d += `L${i % 2 === 1 ? x + 8 : x - 8} ${(top + i * step).toFixed(1)}`;
  return d;
}
