import type { ReactNode } from 'react';
import type { Car } from '../../../system/car.ts';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useUnits } from '../../units/units.ts';

/** What is known of the car in one line, as a printed form has it. */
export function CarFacts({ car }: { readonly car: Car }): ReactNode {
  const text = useText();
  const units = useUnits();
  const numbers = useNumbers();
  const words = text.job.car;
  const { notKnown, to } = text.common;
  const sensor = car.pressureSensor;
  const vapour = car.fuel?.reidVapourPressurePa;
  const ethanol = car.fuel?.ethanolVolumeFraction;
  const range = (low: number, high: number, decimals?: number): string =>
    `${numbers.fixed(units.from('pressure', low), decimals ?? units.decimals('pressure'))}\u00a0${to}\u00a0${units.print('pressure', high, decimals)}`;
  const rows: [string, string][] = [
    [words.short.layout, text.trade.layouts[car.layout].name],
    [words.short.tank, car.tankVolumeM3 === undefined ? notKnown : units.print('volume', car.tankVolumeM3)],
    [words.short.sensor, sensor === undefined ? notKnown : range(sensor.minGaugePa, sensor.maxGaugePa)],
    [
      words.short.fuel,
      vapour === undefined && ethanol === undefined
        ? notKnown
        : [
            vapour === undefined ? '' : range(vapour.low, vapour.high, 1),
            ethanol === undefined ? '' : `E${numbers.fixed(ethanol * 100, 0)}`,
          ]
            .filter((part) => part !== '')
            .join(', '),
    ],
    [words.short.filler, car.filler === undefined ? notKnown : words.fillers[car.filler]],
  ];
  return (
    <dl className="facts" aria-label={words.summary}>
      {rows.map(([name, value]) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd className={value === notKnown ? 'quiet' : ''}>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
