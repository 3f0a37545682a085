#!/usr/bin/env node
import { ensureBundle, ensurePackages, prepare } from '../scripts/setup.mjs';

await prepare(ensurePackages, ensureBundle);
const { main } = await import('../dist/vaporwright.mjs');
await main(process.argv);
