import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const alias = {
  '@': fileURLToPath(new URL('.', import.meta.url)).replace(/\/$/, ''),
  // 'server-only' throws outside a React server bundle; in tests the code does run on the server.
  'server-only': fileURLToPath(new URL('./tests/support/server-only.ts', import.meta.url)),
};

export default defineConfig({
  resolve: { alias },
  test: {
    projects: [
      {
        resolve: { alias },
        // Long enough for a property test on a machine that does other things too.
        test: { name: 'science', include: ['tests/{domain,schemas,golden}/**/*.test.ts'], testTimeout: 30_000 },
      },
      {
        resolve: { alias },
        test: {
          name: 'server',
          include: ['tests/{server,cli,seed-demo,app}/**/*.test.ts'],
          globalSetup: ['tests/support/base-database.ts'],
          // Each file opens its own database in its own process.
          pool: 'forks',
          testTimeout: 30_000,
        },
      },
    ],
  },
});
