import type { LayoutId } from '../car.ts';
import type { Passage, PressureSensor, Space, TransferPump, Weir } from '../network.ts';
import type { SystemParameters } from '../parameters.ts';

/** The parts of a network that a layout decides; `assemble` adds what all layouts share. */
export interface LayoutParts {
  readonly spaces: Space[];
  readonly passages: Passage[];
  readonly weirs?: Weir[];
  readonly transferPumps?: TransferPump[];
  readonly sensors: PressureSensor[];
}

/** One layout: to add another, write one file like its neighbours and list it in `catalogue.ts`. */
export interface Layout {
  readonly id: LayoutId;
  readonly words: string;
  build(p: SystemParameters): LayoutParts;
}

/**
 * The car's pressure sensor on a space.
 *
 * Valid: lag >= 0.
 * Source: none, it only carries parameters over.
 * @param p parameters
 * @param id which reading it is
 * @param space what it is fitted to
 * @returns the sensor
 */
export function pressureSensor(p: SystemParameters, id: PressureSensor['id'], space: string): PressureSensor {
  return { id, part: 'pressureSensor', space, ...p.sensor };
}
