import { defineConfig } from 'vitest/config';

/** The tests that breaks of a folder of lib/domain have to escape: the folder's own, so that none is caught from far away. */
const folder = process.env.MUTATED_FOLDER ?? '*';

export default defineConfig({
  test: {
    include: [`tests/domain/${folder}/**/*.test.ts`],
    // Simulations: too slow to be run for every break.
    exclude: ['tests/domain/longevity/calibration.test.ts'],
    testTimeout: 60_000,
  },
});
