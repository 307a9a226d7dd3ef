import path from 'node:path';
import { z } from 'zod';

/**
 * Everything the program reads from its environment, checked once.
 * DATA_DIR holds the one stateful thing there is: the database file, the session secret and the bank's authority.
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
  /** The address people use, where it is another than HOST says: 'https://seeds.example.org'. */
  HILUM_ADDRESS: z.url({ protocol: /^https?$/ }).optional(),
  /** The steward's own certificate and key, PEM files; without them the bank makes its own. */
  TLS_CERT: z.string().optional(),
  TLS_KEY: z.string().optional(),
  /** Set by `npm run up`, not by people: the port on which its TLS door stands before this server. */
  HILUM_TLS_PORT: z.coerce.number().int().min(1).max(65535).optional(),
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
    TLS_CERT: process.env.TLS_CERT || undefined,
    TLS_KEY: process.env.TLS_KEY || undefined,
    HILUM_TLS_PORT: process.env.HILUM_TLS_PORT || undefined,
  });
}

export const isLoopback = (host: string): boolean => LOOPBACK_HOSTS.has(host);

/**
 * True when only this computer can reach the app: then it opens as its single steward, without sign-in. Whoever names a
 * public address has a proxy that lets others in, also where the app itself listens on loopback.
 */
export function isLoopbackOnly(): boolean {
  const { HOST, HILUM_ADDRESS } = environment();
  return isLoopback(HOST) && HILUM_ADDRESS === undefined;
}

/** Absolute path of the database file. */
export function databaseFile(dataDirectory: string = environment().DATA_DIR): string {
  return path.resolve(dataDirectory, 'hilum.db');
}
