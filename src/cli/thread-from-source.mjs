/** The thread in development, where there is no bundle: teaches it TypeScript first. */
import { register } from 'tsx/esm/api';

register();
await import('./thread-worker.ts');
