/** `npm start`: sets up what is missing, then runs the command line; without arguments, the example. */

import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBundle, ensurePackages, prepare, ROOT } from './setup.mjs';

await prepare(ensurePackages, ensureBundle);
if (process.argv.length <= 2) process.argv.push('demo');
// npm changes into the package folder; paths on the command line are meant from where the user stands.
if (process.env.npm_lifecycle_event === 'start' && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
const { main } = await import(pathToFileURL(join(ROOT, 'dist', 'vaporwright.mjs')).href);
await main(process.argv);
