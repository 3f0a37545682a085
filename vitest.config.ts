import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

const FOLDERS = ['src', 'test', 'bench', 'scripts'];

/** A replaced module stays replaced for whoever comes after in the same process: these tests get one of their own. */
const REPLACING_MODULES = FOLDERS.flatMap((folder) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.test\.tsx?$/.test(name))
    .map((name) => join(folder, name))
    .filter((path) => readFileSync(path, 'utf8').includes('vi.mock(')),
);

/** What takes long comes first, so that all workers end at about the same time; the rest by the time of the last run. */
const LONG_ONES = ['test/store/kill', 'test/e2e', 'test/cli', 'src/diagnosis', 'test/hand-over', 'test/store', 'test/server'];

class LongOnesFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = LONG_ONES.findIndex((part) => moduleId.includes(`/${part}`));
      return at < 0 ? LONG_ONES.length : at;
    };
    return (await super.sort(files)).sort((one, other) => rank(one) - rank(other));
  }
}

export default defineConfig({
  test: {
    // Generous: a busy machine must not turn a correct program into a failing one. Tests of the whole workbench wait for
    // several findings, each of which has its own, shorter, patience.
    testTimeout: 360_000,
    hookTimeout: 360_000,
    // Files mostly wait for processes of their own: one worker fewer than cores leaves a small machine half idle.
    maxWorkers: '100%',
    sequence: { sequencer: LongOnesFirst },
    passWithNoTests: false,
    projects: [
      {
        extends: true,
        test: {
          name: 'together',
          include: FOLDERS.map((folder) => `${folder}/**/*.test.{ts,tsx}`),
          exclude: REPLACING_MODULES,
          // To start a process for each file, and to load everything anew in it, costs more than most files themselves.
          isolate: false,
          // Makes the folder in which tests of the store start their database server, and clears it away.
          globalSetup: ['test/store/global-setup.ts'],
        },
      },
      { extends: true, test: { name: 'alone', include: REPLACING_MODULES } },
    ],
  },
});
