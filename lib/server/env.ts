import path from 'node:path';
import { z } from 'zod';

/**
 * Everything the program reads from its environment, checked once.
 * DATA_DIR holds the one stateful thing there is: the database file and the session secret.
 */
const environmentSchema = z.object({
  DATA_DIR: z.string().min(1).default('data'),
  HOST: z.string().min(1).default('127.0.0.1'),
  PORT: z.coerce.number().int().min(1).max(65535).default(4310),
  /** Fixes 'today' for tests and pictures, YYYY-MM-DD. */
  HILUM_TODAY: z
    .string()
    .regex(/^\d{4}-\d{2}-\d{2}$/)
    .optional(),
  /** How long a write waits for another program that holds the file, milliseconds. Tests make it short. */
  HILUM_BUSY_TIMEOUT_MS: z.coerce.number().int().min(0).max(600_000).default(10_000),
  /** Shown in the terminal at first start; whoever types it becomes the first steward. */
  HILUM_SETUP_CODE: z.string().min(6).optional(),
  /** The address people use when a proxy with a certificate stands before the app: 'https://seeds.example.org'. */
  HILUM_ADDRESS: z.url({ protocol: /^https?$/ }).optional(),
});

export type Environment = z.infer<typeof environmentSchema>;

const LOOPBACK_HOSTS = new Set(['127.0.0.1', 'localhost', '::1']);

export function environment(): Environment {
  return environmentSchema.parse({
    DATA_DIR: process.env.DATA_DIR || undefined,
    HOST: process.env.HOST || undefined,
    PORT: process.env.PORT || undefined,
    HILUM_TODAY: process.env.HILUM_TODAY || undefined,
    HILUM_BUSY_TIMEOUT_MS: process.env.HILUM_BUSY_TIMEOUT_MS || undefined,
    HILUM_SETUP_CODE: process.env.HILUM_SETUP_CODE || undefined,
    HILUM_ADDRESS: process.env.HILUM_ADDRESS || undefined,
  });
}

/** True when only this computer can reach the app: then it opens as its single steward, without sign-in. */
export function isLoopbackOnly(host: string = environment().HOST): boolean {
  return LOOPBACK_HOSTS.has(host);
}

/** Absolute path of the database file. */
export function databaseFile(dataDirectory: string = environment().DATA_DIR): string {
  return path.resolve(dataDirectory, 'hilum.db');
}
