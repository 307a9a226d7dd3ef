import { defineConfig } from 'vitest/config';

/** The tests that mutants of lib/domain have to escape: those of lib/domain. The short calibration is left out as too slow. */
export default defineConfig({
  test: {
    include: ['tests/domain/**/*.test.ts'],
    exclude: ['tests/domain/longevity/calibration.test.ts'],
  },
});
