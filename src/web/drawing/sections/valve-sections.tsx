import type { ReactNode } from 'react';
import { SectionDrawing } from './section.tsx';
import { Solenoid } from './solenoid.tsx';

interface Props {
  readonly title: string;
  readonly places: readonly string[];
  readonly isOpen: boolean;
}

const LIFT = 14;

/** Purge valve: the spring presses the rubber on its seat; current lifts it in pulses. */
export function PurgeValveSection({ title, places, isOpen }: Props): ReactNode {
  const lift = isOpen ? LIFT : 0;
  return (
    <SectionDrawing
      title={title}
      places={places}
      numbers={[
        [350, 110, 264, 96],
        [350, 30, 206, 70],
        [60, 130, 190, 152 - lift],
        [60, 230, 188, 172],
        [30, 186, 70, 192],
        [372, 186, 332, 192],
      ]}
    >
      {({ solid, soft }) => (
        <>
          <Solenoid solid={solid} lift={lift} />
          <path
            className="cut"
            fill={solid}
            d="M120 122H186V138H136V168H50V180H180V172H186V166H214V172H220V180H350V168H264V138H214V122H280V152H350V160H362V222H50V212H38V152H120Z"
            fillRule="evenodd"
          />
          <path className="white" d="M50 180H180V172H192V206H50ZM350 180H220V172H208V206H350Z" />
          <path className="white" d="M136 138H264V166H214V160H186V166H136Z" />
          <rect className="white" x={188} y={84 - lift} width={24} height={62} />
          <rect className="cut" fill={soft} x={182} y={146 - lift} width={36} height={12} />
          {isOpen && <path className="way" d="M54 192H150V150H176M224 150H250" />}
        </>
      )}
    </SectionDrawing>
  );
}

/** Vent valve: open at rest; current pulls the plate down on its seat. */
export function VentValveSection({ title, places, isOpen }: Props): ReactNode {
  const drop = isOpen ? 0 : LIFT;
  return (
    <SectionDrawing
      title={title}
      places={places}
      numbers={[
        [350, 110, 264, 96],
        [60, 120, 150, 150 + drop],
        [60, 232, 158, 176],
        [350, 232, 240, 214],
        [372, 160, 326, 156],
      ]}
    >
      {({ solid, soft }) => (
        <>
          <Solenoid solid={solid} lift={LIFT - drop} />
          <path
            className="cut"
            fill={solid}
            d="M106 122H186V132H118V178H160V188H150V236H138V188H106ZM294 122H214V132H330V122ZM240 178H294V168H340V180H294V188H262V236H250V188H240Z"
          />
          <path className="thin" d="M294 132V144M330 132V144" />
          <rect className="white" x={188} y={84 - LIFT + drop} width={24} height={62} />
          <rect className="cut" fill={soft} x={148} y={146 - LIFT + drop + 12} width={104} height={10} />
          <path className="outline" d="M160 178V170H170V178M240 178V170H230V178" />
          {isOpen && <path className="way" d="M334 156H262M200 176V230" />}
        </>
      )}
    </SectionDrawing>
  );
}
