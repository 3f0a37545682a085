import { type ReactNode, useState } from 'react';
import type { Car, LayoutId } from '../../../system/car.ts';
import { Button } from '../../kit/button.tsx';
import { Choice } from '../../kit/choice.tsx';
import { FileButton } from '../../kit/fields.tsx';
import { saveFile } from '../../kit/save-file.ts';
import { useText } from '../../text/language.ts';
import { useSheet } from '../sheet-context.ts';
import { CarDetails } from './car-details.tsx';
import { CarFacts } from './car-facts.tsx';
import { VehicleFields } from './vehicle-fields.tsx';

export function CarSection(): ReactNode {
  const { job, save, takeIn, isReadOnly } = useSheet();
  const text = useText();
  const words = text.job.car;
  const { car } = job;
  const [isChoosing, setIsChoosing] = useState(false);
  const choose = (layout: LayoutId): void => {
    const label = job.vehicle.name.trim() || text.jobs.number(job.number);
    save('car', car === null ? { schema: 'vaporwright-car-1', label, layout } : { ...car, layout });
    setIsChoosing(false);
  };
  return (
    <>
      <VehicleFields />
      {car !== null && <CarFacts car={car} />}
      {!isReadOnly && (car === null || isChoosing) && (
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
      )}
      {!isReadOnly && (
        <div className="buttons">
          {car !== null && (
            <Button aria-expanded={isChoosing} onClick={() => setIsChoosing(!isChoosing)}>
              {words.changeLayout}
            </Button>
          )}
          <FileButton label={words.load} accept=".json,application/json" onFiles={(files) => void takeIn(files)} />
          {car !== null && (
            <Button kind="bare" onClick={() => saveCar(car)}>
              {words.saveFile}
            </Button>
          )}
        </div>
      )}
      {car !== null && !isReadOnly && <CarDetails car={car} onChange={(next) => save('car', next)} />}
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
