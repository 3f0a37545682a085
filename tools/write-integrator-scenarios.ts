/**
 * Writes the scenarios of test/integrator as JSON beside the goldens. Afterwards, for every one of them:
 *
 *   tools/independent_integrator.py golden test/integrator/goldens/NAME.scenario.json test/integrator/goldens/NAME.golden.json
 *
 * or all at once: npx tsx tools/write-integrator-scenarios.ts --solve
 */
import { spawnSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { GOLDEN_SCENARIOS } from '../test/integrator/scenarios.ts';

const folder = fileURLToPath(new URL('../test/integrator/goldens/', import.meta.url));
const script = fileURLToPath(new URL('./independent_integrator.py', import.meta.url));
for (const scenario of GOLDEN_SCENARIOS) {
  const base = `${folder}${scenario.label}`;
  writeFileSync(`${base}.scenario.json`, `${JSON.stringify(scenario, null, 1)}\n`);
  console.log(`wrote ${base}.scenario.json`);
  if (!process.argv.includes('--solve')) continue;
  const solved = spawnSync('python3', [script, 'golden', `${base}.scenario.json`, `${base}.golden.json`], {
    stdio: 'inherit',
  });
  if (solved.status !== 0) process.exit(1);
  console.log(`solved ${base}.golden.json`);
}
