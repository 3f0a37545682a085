import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['src/**/*.test.{ts,tsx}', 'test/**/*.test.ts', 'bench/**/*.test.ts', 'scripts/**/*.test.ts'],
    // Generous: a busy machine must not turn a correct program into a failing one.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // Files mostly wait for processes of their own: one worker fewer than cores leaves a small machine half idle.
    maxWorkers: '100%',
    // Makes the folder in which tests of the store start their database server, and clears it away.
    globalSetup: ['test/store/global-setup.ts'],
    passWithNoTests: false,
  },
});
