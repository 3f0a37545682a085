import type { ReactNode } from 'react';
import type { Car } from '../../../system/car.ts';
import { Choice } from '../../kit/choice.tsx';
import { NumberField } from '../../kit/fields.tsx';
import { QuantityField } from '../../kit/quantity-field.tsx';
import { withKey } from '../../kit/with-key.ts';
import { useText } from '../../text/language.ts';
import { RangeFields } from './range-fields.tsx';

interface Props {
  readonly car: Car;
  readonly onChange: (car: Car) => void;
}

type WithoutUndefined<T> = { [K in keyof T]: Exclude<T[K], undefined> };

/** A group with nothing in it is not written. */
const orNothing = <T extends object>(group: T): T | undefined => (Object.keys(group).length === 0 ? undefined : group);

/** Volumes, sensor and fuel; what is not known stays empty. */
export function CarDetails({ car, onChange }: Props): ReactNode {
  const text = useText();
  const words = text.job.car;
  const set = <K extends keyof Car>(key: K, value: Car[K] | undefined): void => onChange(withKey(car, key, value));
  const positive = (value: number): string | undefined => (value > 0 ? undefined : words.notPositive);
  const fuel = car.fuel ?? {};
  const monitor = car.monitor ?? {};
  const yesNo = [
    { value: 'yes' as const, name: words.yes },
    { value: 'no' as const, name: words.no },
    { value: 'unknown' as const, name: text.common.notKnown },
  ];
  const recovery = car.onBoardRefuellingRecovery;
  return (
    <div className="stack">
      <p className="quiet small">{words.unknown}</p>
      <div className="fields">
        <QuantityField
          label={words.tankVolume}
          quantity="volume"
          valueSi={car.tankVolumeM3}
          check={positive}
          onChange={(value) => set('tankVolumeM3', value)}
        />
        <QuantityField
          label={words.neckVolume}
          quantity="volume"
          valueSi={car.fillerNeckVolumeM3}
          check={positive}
          onChange={(value) => set('fillerNeckVolumeM3', value)}
        />
        <QuantityField
          label={words.canisterVolume}
          quantity="volume"
          valueSi={car.canisterFreeVolumeM3}
          check={positive}
          onChange={(value) => set('canisterFreeVolumeM3', value)}
        />
      </div>
      <div className="fields">
        <RangeFields
          quantity="pressure"
          lowLabel={words.sensorMin}
          highLabel={words.sensorMax}
          value={car.pressureSensor && { low: car.pressureSensor.minGaugePa, high: car.pressureSensor.maxGaugePa }}
          needsBoth={words.sensorPair}
          check={({ low, high }) => (low < high ? undefined : words.sensorOrder)}
          onChange={(range) =>
            set('pressureSensor', range && { ...car.pressureSensor, minGaugePa: range.low, maxGaugePa: range.high })
          }
        />
        <QuantityField
          label={words.drawTarget}
          quantity="pressure"
          valueSi={monitor.drawTargetGaugePa}
          check={(value) => (value < 0 ? undefined : words.negative)}
          onChange={(value) => set('monitor', orNothing(withKey(monitor, 'drawTargetGaugePa', value)))}
        />
        <NumberField
          label={words.drawTimeOut}
          unit="s"
          decimals={1}
          value={monitor.drawTimeOutS}
          notNumber={words.notNumber}
          check={positive}
          onChange={(value) => set('monitor', orNothing(withKey(monitor, 'drawTimeOutS', value)))}
        />
      </div>
      <div className="fields">
        <RangeFields
          quantity="pressure"
          lowLabel={words.rvpLow}
          highLabel={words.rvpHigh}
          hint={words.rvpHelp}
          value={fuel.reidVapourPressurePa}
          needsBoth={words.rvpPair}
          check={({ low, high }) =>
            low <= 0 || high <= 0 ? words.notPositive : low <= high ? undefined : words.rvpOrder
          }
          onChange={(range) => set('fuel', orNothing(withKey(fuel, 'reidVapourPressurePa', range)))}
        />
        <NumberField
          label={words.ethanol}
          unit="%"
          decimals={1}
          value={fuel.ethanolVolumeFraction === undefined ? undefined : fuel.ethanolVolumeFraction * 100}
          notNumber={words.notNumber}
          check={(value) => (value >= 0 && value <= 100 ? undefined : words.badPercent)}
          onChange={(value) =>
            set(
              'fuel',
              orNothing(withKey(fuel, 'ethanolVolumeFraction', value === undefined ? undefined : value / 100)),
            )
          }
        />
      </div>
      <Choice<WithoutUndefined<Required<Pick<Car, 'filler'>>>['filler'] | 'unknown'>
        label={words.filler}
        options={[
          { value: 'capped', name: words.fillers.capped },
          { value: 'capless', name: words.fillers.capless },
          { value: 'unknown', name: text.common.notKnown },
        ]}
        value={car.filler ?? 'unknown'}
        onChange={(value) => set('filler', value === 'unknown' ? undefined : value)}
      />
      <Choice
        label={words.recovery}
        options={yesNo}
        value={recovery === undefined ? 'unknown' : recovery ? 'yes' : 'no'}
        onChange={(value) => set('onBoardRefuellingRecovery', value === 'unknown' ? undefined : value === 'yes')}
      />
    </div>
  );
}
