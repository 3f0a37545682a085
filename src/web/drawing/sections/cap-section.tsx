import type { ReactNode } from 'react';
import { SectionDrawing } from './section.tsx';
import { springPath } from './solenoid.tsx';

interface Props {
  readonly title: string;
  readonly places: readonly string[];
}

/** Cap on its neck: the large ring seals, two small valves relieve pressure and vacuum. */
export function CapSection({ title, places }: Props): ReactNode {
  return (
    <SectionDrawing
      title={title}
      places={places}
      numbers={[
        [50, 40, 120, 58],
        [50, 110, 133, 106],
        [50, 200, 128, 180],
        [352, 60, 214, 96],
        [352, 130, 222, 146],
        [352, 200, 204, 172],
      ]}
    >
      {({ solid, soft }) => (
        <>
          <path className="axis" d="M200 8V244" />
          <path className="cut" fill={solid} d="M104 36H296V50H282V92H270V70H130V92H118V50H104Z" />
          <path className="cut" fill={solid} d="M146 70H160V158H176V168H146ZM254 70H240V158H224V168H254Z" />
          <path className="cut" fill={solid} d="M128 112H140V236H128ZM272 112H260V236H272Z" />
          <circle className="cut" fill={soft} cx={135} cy={104} r={8} />
          <circle className="cut" fill={soft} cx={265} cy={104} r={8} />
          <path className="thin" d={springPath(200, 74, 140, 5)} />
          <rect className="cut" fill={soft} x={168} y={146} width={64} height={10} />
          <rect className="white" x={174} y={140} width={52} height={6} />
          <path className="thin" d="M192 156V178H208V156M188 178H212" />
          <path className="thin" d="M140 126L146 130M140 142L146 146M260 126L254 130M260 142L254 146" />
        </>
      )}
    </SectionDrawing>
  );
}
