import { fileURLToPath } from 'node:url';
import { defineConfig } from 'prisma/config';

// Prisma's own schema engine is a download that not every machine can reach; this file answers in its place.
// For development only: on users' machines lib/server/database/migrate.ts applies the same SQL files.
process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= fileURLToPath(
  new URL('./prisma/engine/schema-engine.mjs', import.meta.url),
);

export default defineConfig({
  schema: 'prisma/schema.prisma',
  migrations: { path: 'prisma/migrations' },
  datasource: { url: process.env.DATABASE_URL ?? 'file:./data/development.db' },
});
