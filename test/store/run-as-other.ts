/** Opens a store and prints what comes of it. Run as a user who may not write everywhere. Argument: data folder. */
import { openStore } from '../../src/jobs/open-store.ts';
import { StoreProblem } from '../../src/jobs/store-problem.ts';

try {
  const store = await openStore({ dataFolder: process.argv[2] ?? '' });
  await store.close();
  process.stdout.write(JSON.stringify({ opened: true }));
} catch (error) {
  if (!(error instanceof StoreProblem)) throw error;
  process.stdout.write(JSON.stringify({ code: error.code, message: error.message, advice: error.advice }));
}
