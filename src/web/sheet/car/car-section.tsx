import type { ReactNode } from 'react';
import type { Car, LayoutId } from '../../../system/car.ts';
import { Button } from '../../kit/button.tsx';
import { Choice } from '../../kit/choice.tsx';
import { FileButton } from '../../kit/fields.tsx';
import { Fold } from '../../kit/fold.tsx';
import { saveFile } from '../../kit/save-file.ts';
import { useText } from '../../text/language.ts';
import { useNumbers } from '../../text/numbers.ts';
import { useSheet } from '../sheet-context.ts';
import { CarDetails } from './car-details.tsx';
import { CarFacts } from './car-facts.tsx';
import { VehicleFields, vehicleInWords } from './vehicle-fields.tsx';

export function CarSection(): ReactNode {
  const { job, save, takeIn, isReadOnly } = useSheet();
  const text = useText();
  const numbers = useNumbers();
  const words = text.job.car;
  const { car } = job;
  const choose = (layout: LayoutId): void => {
    const label = job.vehicle.name.trim() || text.jobs.number(job.number);
    save('car', car === null ? { schema: 'vaporwright-car-1', label, layout } : { ...car, layout });
  };
  return (
    <>
      {car !== null && <CarFacts car={car} />}
      <div className="folds">
        {!isReadOnly && (
          // Stays open after the first choice: with the arrow keys one passes through the others.
          <Fold
            label={words.layout}
            words={car === null ? undefined : text.trade.layouts[car.layout].name}
            isOpenAtFirst={car === null}
          >
            <Choice<LayoutId>
              label={words.layout}
              hint={car === null ? `${words.chooseLayout} ${words.layoutHelp}` : words.layoutHelp}
              isStacked
              options={(Object.keys(text.trade.layouts) as LayoutId[]).map((value) => ({
                value,
                ...text.trade.layouts[value],
              }))}
              value={car?.layout ?? null}
              onChange={choose}
            />
          </Fold>
        )}
        <Fold
          label={words.vehicle}
          words={vehicleInWords(job.vehicle, (distance) => words.km(numbers.fixed(distance, 0)))}
          {...(isReadOnly ? { act: text.job.history.detail } : {})}
        >
          <VehicleFields />
        </Fold>
        {!isReadOnly && car !== null && (
          <Fold label={words.details}>
            <CarDetails car={car} onChange={(next) => save('car', next)} />
          </Fold>
        )}
      </div>
      {!isReadOnly && (
        <div className="buttons">
          <FileButton label={words.load} accept=".json,application/json" onFiles={(files) => void takeIn(files)} />
          {car !== null && (
            <Button kind="bare" onClick={() => saveCar(car)}>
              {words.saveFile}
            </Button>
          )}
        </div>
      )}
    </>
  );
}

function saveCar(car: Car): void {
  const name =
    car.label
      .toLowerCase()
      .replace(/[^\p{Letter}\p{Number}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'car';
  saveFile(new Blob([`${JSON.stringify(car, null, 2)}\n`], { type: 'application/json' }), `${name}.car.json`);
}
