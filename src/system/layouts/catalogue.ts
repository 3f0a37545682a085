import type { LayoutId } from '../car.ts';
import { ENGINE_OFF, ENGINE_VACUUM } from './engine-vacuum.ts';
import type { Layout } from './layout.ts';
import { PUMP_REFERENCE } from './pump-reference.ts';
import { SADDLE_TANK } from './saddle-tank.ts';
import { SEALED_TANK } from './sealed-tank.ts';
import { TWO_PATH_PURGE } from './two-path-purge.ts';

/** All layouts. A new one is listed here and named in `LAYOUTS` of the car format. */
export const LAYOUT_CATALOGUE: Readonly<Record<LayoutId, Layout>> = {
  'engine-vacuum': ENGINE_VACUUM,
  'engine-off': ENGINE_OFF,
  'pump-reference': PUMP_REFERENCE,
  'sealed-tank': SEALED_TANK,
  'saddle-tank': SADDLE_TANK,
  'two-path-purge': TWO_PATH_PURGE,
};
