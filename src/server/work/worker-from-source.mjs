/** The worker under the test runner and in development, where there is no bundle: teaches its thread TypeScript first. */
import { register } from 'tsx/esm/api';

register();
export const { finding, follow, handOver, read, simulatedCar } = await import('./worker.ts');
