/** What is free in a job: the car's parameters, then each recording's. */
import type { Car } from '../../system/car.ts';
import { applyCause, type Cause } from '../causes/catalogue.ts';
import type { Parameter } from '../fit/parameter.ts';
import type { Prepared } from '../prepare.ts';
import { carParameters, recordingParameters } from '../priors/nuisances.ts';

/** All parameters of a job: the car's, then each recording's; changed by a cause where one is given. */
export function parametersOf(car: Car, prepared: readonly Prepared[], cause?: Cause): Parameter[] {
  const sound = [
    ...carParameters(car, prepared[0]!.conditions),
    ...prepared.flatMap((p, i) => recordingParameters(p.shape, i)),
  ];
  return cause
    ? applyCause(
        sound,
        [cause],
        prepared.map((p) => p.procedure),
      )
    : sound;
}
