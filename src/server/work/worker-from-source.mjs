/** The worker under the test runner and in development, where there is no bundle: teaches its thread TypeScript first. */
import { register } from 'tsx/esm/api';

register();
export const { finding, handOver, read } = await import('./worker.ts');
