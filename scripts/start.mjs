/** `npm start`: sets up what is missing, then runs the command line; without arguments, the workbench. */

import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureBundle, ensurePackages, ensurePages, prepare, ROOT } from './setup.mjs';

if (process.argv.length <= 2) process.argv.push('serve');
const opensPages = process.argv[2] === 'serve' && !process.argv.includes('--help');
await prepare(ensurePackages, ensureBundle, ...(opensPages ? [ensurePages] : []));
// npm changes into the package folder; paths on the command line are meant from where the user stands.
if (process.env.npm_lifecycle_event === 'start' && process.env.INIT_CWD) process.chdir(process.env.INIT_CWD);
const { main } = await import(pathToFileURL(join(ROOT, 'dist', 'vaporwright.mjs')).href);
await main(process.argv);
