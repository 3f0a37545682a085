/** A simulated car in a thread of its own, so that its bus keeps its times while the server answers. */
import { makeCar } from '../../capture/simulated-car/make-car.ts';
import { serveCar } from '../../capture/simulated-car/serve-car.ts';
import type { CompanionTask } from '../work/tasks.ts';
import { codesFor } from './codes-for.ts';
import type { FromSimulatedCar } from './live-tasks.ts';

export async function simulatedCar({ port, layout, fault, startS }: CompanionTask<'simulatedCar'>): Promise<void> {
  const ended = new Promise<void>((resolve) => port.once('close', resolve));
  port.ref();
  const car = await serveCar(
    makeCar({ layout, faults: fault === undefined ? [] : [fault], codes: codesFor(fault), incomplete: true }),
    { startS },
  );
  port.postMessage({ address: car.address } satisfies FromSimulatedCar);
  await ended;
  await car.close();
}
