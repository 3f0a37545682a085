import { type ReactNode, useState } from 'react';
import type { Job } from '../../../jobs/record/job.ts';
import { NumberField, TextField } from '../../kit/fields.tsx';
import { withKey } from '../../kit/with-key.ts';
import { useText } from '../../text/language.ts';
import { useSheet } from '../sheet-context.ts';

const VIN = /^[A-HJ-NPR-Z0-9]{17}$/;
const OLDEST = 1970;
const NEWEST = 2100;

/** Registration, distance and the like in one line. */
export function vehicleInWords(vehicle: Job['vehicle'], km: (distance: number) => string): string {
  return [
    vehicle.name,
    vehicle.registration,
    vehicle.modelYear === undefined ? undefined : String(vehicle.modelYear),
    vehicle.odometerKm === undefined ? undefined : km(vehicle.odometerKm),
    vehicle.owner,
  ]
    .filter((part) => part !== undefined && part !== '')
    .join(' · ');
}

/** Names and papers of the car. */
export function VehicleFields(): ReactNode {
  const { job, save, isReadOnly: readOnly } = useSheet();
  const text = useText();
  const words = text.job.car;
  const { vehicle } = job;
  return (
    <div className="fields">
      <TextField
        label={words.name}
        value={vehicle.name}
        maxLength={120}
        readOnly={readOnly}
        onChange={(name) => save('vehicle', { ...vehicle, name })}
      />
      <TextField
        label={words.registration}
        value={vehicle.registration ?? ''}
        maxLength={20}
        readOnly={readOnly}
        onChange={(value) => save('vehicle', withKey(vehicle, 'registration', value))}
      />
      <NumberField
        label={words.odometer}
        value={vehicle.odometerKm}
        decimals={0}
        readOnly={readOnly}
        notNumber={words.notNumber}
        check={(value) => (value < 0 ? words.notPositive : undefined)}
        onChange={(value) => save('vehicle', withKey(vehicle, 'odometerKm', value))}
      />
      <NumberField
        label={words.modelYear}
        value={vehicle.modelYear}
        decimals={0}
        readOnly={readOnly}
        notNumber={words.notNumber}
        check={(value) =>
          Number.isInteger(value) && value >= OLDEST && value <= NEWEST ? undefined : words.badYear(OLDEST, NEWEST)
        }
        onChange={(value) => save('vehicle', withKey(vehicle, 'modelYear', value))}
      />
      <TextField
        label={words.owner}
        value={vehicle.owner ?? ''}
        maxLength={200}
        readOnly={readOnly}
        onChange={(value) => save('vehicle', withKey(vehicle, 'owner', value))}
      />
      <VinField
        key={vehicle.vin ?? ''}
        value={vehicle.vin ?? ''}
        readOnly={readOnly}
        onChange={(value) => save('vehicle', withKey(vehicle, 'vin', value))}
      />
    </div>
  );
}

interface VinProps {
  readonly value: string;
  readonly readOnly: boolean;
  readonly onChange: (value: string) => void;
}

/** Kept here until it is whole: half a number is none. */
function VinField({ value, readOnly, onChange }: VinProps): ReactNode {
  const words = useText().job.car;
  const [typed, setTyped] = useState(value);
  const [isLeft, setIsLeft] = useState(false);
  const isGood = typed === '' || VIN.test(typed);
  return (
    <TextField
      label={words.vin}
      value={typed}
      maxLength={17}
      readOnly={readOnly}
      spellCheck={false}
      hint={typed === '' || isGood ? undefined : words.vinHint}
      error={isLeft && !isGood ? words.badVin : undefined}
      onBlur={() => {
        setIsLeft(true);
        // Handed on when left, so that the field keeps the focus while it is typed.
        if (isGood && typed !== value) onChange(typed);
      }}
      onChange={(next) => {
        setTyped(next.toUpperCase().replace(/\s/g, ''));
        setIsLeft(false);
      }}
    />
  );
}
