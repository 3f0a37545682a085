/**
 * Serves the simulated car and lets Debian's python3-can talk to it; what was said is kept as a golden capture.
 *
 * `apt-get install python3-can`, then `npx tsx tools/python-can-check.ts [python]`.
 */
import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { serveCar } from '../src/capture/simulated-car/serve-car.ts';
import { goldenCar } from '../test/capture/golden-car.ts';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const car = await serveCar(goldenCar());
const client = spawn(
  process.argv[2] ?? '/usr/bin/python3',
  [here('python-can-client.py'), String(car.port), here('../test/capture/goldens/python-can.log')],
  { stdio: 'inherit' },
);
client.on('exit', async (code) => {
  await car.close();
  process.exit(code ?? 1);
});
