import { memo, type ReactNode, useId } from 'react';
import { sizesFor } from '../placement/draft.ts';
import { roundedPath } from '../placement/geometry.ts';
import type { Label, Lobe, Scheme } from '../placement/scheme.ts';
import { dotsPath, grainsOf } from './grains.ts';
import { PartSymbol } from './symbols.tsx';

const WALL = 3;

interface Props {
  readonly scheme: Scheme;
  /** Words in the picture that do not change while it plays. */
  readonly manifold: string;
  readonly ejector: string;
}

/** Everything that is drawn, as SVG; what changes in time carries `data-` names for the painter. */
export const SystemPicture = memo(function SystemPicture({ scheme, manifold, ejector }: Props): ReactNode {
  const id = useId();
  const { valve } = sizesFor(scheme.width, 1);
  const tubes = scheme.tubes.map((tube) => ({ tube, d: roundedPath(tube.points, 8) }));
  const canister = scheme.figures.find((f) => f.kind === 'canister')!.box;
  return (
    <>
      <defs>
        <pattern id={`${id}-fuel`} width="9" height="9" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="9" height="9" className="fuel-ground" />
          <path d="M0 0V9" className="fuel-line" />
        </pattern>
        {scheme.lobes.map((lobe) => (
          <clipPath key={lobe.space} id={`${id}-${lobe.space}`}>
            <path d={outline(lobe)} />
          </clipPath>
        ))}
      </defs>
      {scheme.enclosures.map(({ box, part }) => (
        <rect key={part} className="enclosure" x={box.x} y={box.y} width={box.w} height={box.h} />
      ))}
      {scheme.lobes.map((lobe) => (
        <g key={lobe.space} clipPath={`url(#${id}-${lobe.space})`}>
          <rect
            className="gas"
            data-space={lobe.space}
            x={lobe.box.x}
            y={lobe.box.y}
            width={lobe.box.w}
            height={lobe.box.h}
          />
          <rect
            data-level={lobe.space}
            fill={`url(#${id}-fuel)`}
            x={lobe.box.x}
            y={lobe.box.y}
            width={lobe.box.w}
            height={0}
          />
          <path className="surface" data-surface={lobe.space} d={`M${lobe.box.x} 0H${lobe.box.x + lobe.box.w}`} />
        </g>
      ))}
      <g className="tubes">
        {tubes.map(({ tube, d }) => (
          <path key={`wall ${d}`} className="wall" strokeWidth={tube.bore + WALL} d={d} />
        ))}
        {tubes.map(({ tube, d }) => (
          <path key={`bore ${d}`} className="bore" data-space={tube.space} strokeWidth={tube.bore} d={d} />
        ))}
        <Hose scheme={scheme} />
        <Pour scheme={scheme} />
      </g>
      {scheme.lobes.map((lobe) => (
        <path key={lobe.space} className="shell" d={outline(lobe)} />
      ))}
      <g>
        <rect className="gas" data-space="head" {...size(scheme.headBox)} />
        {scheme.cells.map((cell) => {
          const grains = grainsOf(cell);
          return (
            <g key={cell.space}>
              <rect className="gas" data-space={cell.space} {...size(cell)} />
              <path className="grains" d={dotsPath(grains)} />
              <path className="grains loaded" data-loading={cell.space} />
            </g>
          );
        })}
        <path
          className="screen"
          d={`M${scheme.headBox.x + scheme.headBox.w} ${canister.y}V${canister.y + canister.h}`}
        />
        <rect className="shell" {...size(canister)} />
      </g>
      {scheme.thin
        .map(({ points, dashed }) => ({ d: roundedPath(points, 5), dashed }))
        .map(({ d, dashed }) => (
          <path key={d} className={dashed ? 'pen dashed' : 'pen'} d={d} />
        ))}
      {scheme.figures.map((figure) => (
        <PartSymbol key={figure.id} figure={figure} half={valve} nameSize={scheme.nameSize} />
      ))}
      <Sources scheme={scheme} manifold={manifold} ejector={ejector} />
      {scheme.lobes.map((lobe, i) => (
        <LobeText key={lobe.space} lobe={lobe} isMain={i === scheme.lobes.length - 1} nameSize={scheme.nameSize} />
      ))}
      {scheme.fault && (
        <circle className="fault-ring" cx={scheme.fault.at.x} cy={scheme.fault.at.y} r={scheme.fault.radius} />
      )}
      {scheme.labels.map((label) => (
        <LabelText key={label.id} label={label} scheme={scheme} />
      ))}
    </>
  );
});

const size = (box: { x: number; y: number; w: number; h: number }) => ({
  x: box.x,
  y: box.y,
  width: box.w,
  height: box.h,
});

const outline = (lobe: Lobe): string => {
  // Round the corners of the shell, but close it: begin in the middle of the first edge.
  const p = lobe.outline;
  const middle = { x: (p[0]!.x + p.at(-1)!.x) / 2, y: (p[0]!.y + p.at(-1)!.y) / 2 };
  return `${roundedPath([middle, ...p, middle], 16)}Z`;
};

/** The ribbed part of the filler's pipe. */
function Hose({ scheme }: { readonly scheme: Scheme }): ReactNode {
  const hose = scheme.touch.find((t) => t.part === 'fillerHose')?.box;
  const pipe = scheme.tubes.find((t) => t.part === 'fillerNeck');
  if (hose === undefined || pipe === undefined) return null;
  const x = pipe.points[0]!.x;
  const w = pipe.bore / 2 + 4;
  const ribs: string[] = [];
  for (let y = hose.y + 6; y < hose.y + hose.h - 4; y += 8) ribs.push(`M${x - w} ${y}h3M${x + w} ${y}h-3`);
  return <path className="pen" d={ribs.join('')} />;
}

/** Fuel that runs down the filler, and the nozzle's spout, while it is on. */
function Pour({ scheme }: { readonly scheme: Scheme }): ReactNode {
  const pipe = scheme.tubes.find((t) => t.part === 'fillerNeck');
  if (pipe === undefined) return null;
  const [top, bottom] = [pipe.points[0]!, pipe.points.at(-1)!];
  return (
    <g data-pour="" display="none">
      <path className="pour" strokeWidth={pipe.bore - 3} d={`M${bottom.x} ${bottom.y}V${top.y - 4}`} />
      <path className="body plain" d={`M${top.x - 5} ${top.y + 2}V${top.y - 30}H${top.x + 5}V${top.y + 2}Z`} />
    </g>
  );
}

function Sources({ scheme, manifold, ejector }: Props): ReactNode {
  return scheme.figures
    .filter((f) => f.kind === 'source')
    .map(({ id, box, space }) => (
      <text key={id} className="in-vessel" textAnchor="middle" fontSize={scheme.nameSize}>
        <tspan x={box.x + box.w / 2} y={box.y + box.h / 2 - 4}>
          {space === 'ejector' ? ejector : manifold}
        </tspan>
        <tspan
          x={box.x + box.w / 2}
          y={box.y + box.h / 2 + scheme.stateSize}
          className="strong"
          fontSize={scheme.stateSize}
          data-pressure={space}
        />
      </text>
    ));
}

function LobeText({
  lobe,
  isMain,
  nameSize,
}: {
  readonly lobe: Lobe;
  readonly isMain: boolean;
  readonly nameSize: number;
}): ReactNode {
  const big = Math.max(16, Math.min(38, lobe.textWidth / 6.6));
  const { x } = lobe.textAt;
  const small = Math.max(17, big * 0.76);
  const gasHeight = isMain ? big + nameSize * 1.35 : big;
  return (
    <g className="in-tank" textAnchor="middle">
      <g data-gas-text={lobe.space} data-height={gasHeight}>
        <text
          className="big"
          x={x}
          y={big * 0.82}
          fontSize={big}
          data-pressure={isMain ? lobe.space : undefined}
          data-pressure-number={isMain ? undefined : lobe.space}
        />
        {isMain && <text x={x} y={gasHeight - 3} fontSize={nameSize} data-vapour={lobe.space} />}
      </g>
      <g data-fuel-text={lobe.space} data-height={small}>
        <text
          className="big"
          x={x}
          y={small * 0.82}
          fontSize={small}
          data-full={isMain ? lobe.space : undefined}
          data-share={isMain ? undefined : lobe.space}
        />
      </g>
    </g>
  );
}

function LabelText({ label, scheme }: { readonly label: Label; readonly scheme: Scheme }): ReactNode {
  const { box, lines } = label;
  const x = label.align === 'start' ? box.x : label.align === 'end' ? box.x + box.w : box.x + box.w / 2;
  const step = scheme.nameSize * 1.22;
  return (
    <g className="label">
      {label.leader && <path className="leader" d={roundedPath(label.leader, 0)} />}
      <text textAnchor={label.align} fontSize={scheme.nameSize}>
        {lines.map((line, i) => (
          <tspan key={line} x={x} y={box.y + step * (i + 0.78)}>
            {line}
          </tspan>
        ))}
        {label.hasState && (
          <tspan
            className="state"
            x={x}
            y={box.y + step * lines.length + scheme.stateSize * 0.95}
            fontSize={scheme.stateSize}
            data-state={label.id}
          />
        )}
        {(label.faultLines === 2 ? ['fault-name', 'fault-size'] : label.faultLines === 1 ? ['fault'] : []).map(
          (name, i) => (
            <tspan
              key={name}
              className="state warn"
              x={x}
              y={box.y + step * lines.length + scheme.stateSize * (0.95 + 1.22 * (i + (label.hasState ? 1 : 0)))}
              fontSize={scheme.stateSize}
              data-state={name}
            />
          ),
        )}
      </text>
    </g>
  );
}
