import type { Car, LayoutId } from './car.ts';
import { carParameters } from './car-parameters.ts';
import { applyFaults } from './faults/catalogue.ts';
import type { Fault } from './faults/fault.ts';
import { LAYOUT_CATALOGUE } from './layouts/catalogue.ts';
import type { Network } from './network.ts';
import type { SystemParameters } from './parameters.ts';

/**
 * The network of a car from its parameters, layout and faults.
 *
 * Valid: faults that the layout can have (throws otherwise).
 * Source: layouts and fault catalogue of this room.
 * @param nominal parameters of the sound car; not changed
 * @param layout how the parts are joined
 * @param faults what is wrong, none, one or several
 * @returns spaces, passages and sensors as plain data
 */
export function assemble(nominal: SystemParameters, layout: LayoutId, faults: readonly Fault[] = []): Network {
  const p = applyFaults(nominal, layout, faults);
  const parts = LAYOUT_CATALOGUE[layout].build(p);
  const stuck = p.tankVent.fillLimitStuck;
  return {
    layout,
    spaces: parts.spaces,
    passages: parts.passages,
    weirs: parts.weirs ?? [],
    transferPumps: parts.transferPumps ?? [],
    fillSpace: 'tank',
    drawSpace: 'tank',
    airEntrainment: p.filler.airEntrainment,
    fillLimit: {
      shutFraction: p.tankVent.fillLimitShutFraction,
      openFraction: p.tankVent.fillLimitOpenFraction,
      ...(stuck === undefined ? {} : { stuck }),
    },
    nozzleShutOffPa: p.filler.nozzleShutOffPa,
    ejectorSuctionPerBoost: p.boost.ejectorSuctionPerBoost,
    sensors: parts.sensors,
    readings: p.readings,
  };
}

/**
 * The network of a car file: what the file tells, defaults for the rest.
 *
 * Valid: as assemble.
 * Source: as assemble and carParameters.
 * @param car the car
 * @param faults what is wrong
 * @param change what is known beyond the file, written into the parameters (fill, volatility, ...)
 * @returns the network
 */
export function assembleCar(car: Car, faults: readonly Fault[] = [], change?: (p: SystemParameters) => void): Network {
  const p = carParameters(car);
  change?.(p);
  return assemble(p, car.layout, faults);
}
