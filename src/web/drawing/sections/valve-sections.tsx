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
        [350, 100, 264, 92],
        [350, 30, 206, 70],
        [60, 120, 190, 152 - lift],
        [60, 236, 189, 164],
        [28, 140, 34, 181],
        [374, 160, 366, 203],
      ]}
    >
      {({ solid, soft }) => (
        <>
          <Solenoid solid={solid} lift={lift} />
          <path
            className="cut"
            fill={solid}
            d="M112 122H288V180H382V190H207V166H214V158H207M112 122V166H22V172H140V134H260V168H214M193 158H186V168H164V190H22V196H112V226H382V216H193V158"
          />
          <rect className="cut" fill={soft} x={182} y={146 - lift} width={36} height={12} />
          <rect className="white" x={188} y={84 - lift} width={24} height={62} />
          {isOpen && <path className="way" d="M26 181H152V152H176M200 164V203H378" />}
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
          <rect className="white" x={188} y={84 - LIFT + drop} width={24} height={62} />
          <rect className="cut" fill={soft} x={148} y={146 - LIFT + drop + 12} width={104} height={10} />
          <path className="outline" d="M160 178V170H170V178M240 178V170H230V178" />
          {isOpen && <path className="way" d="M334 156H262M200 176V230" />}
        </>
      )}
    </SectionDrawing>
  );
}
