import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { test as base } from '@playwright/test';
import { BANKS, TEST_TODAY } from './prepare-banks';
import { type RunningServer, startServer } from './start-server';

interface BankOptions {
  /** which prepared bank the server opens */
  bank: 'demo' | 'empty';
  /** a name here gives a story a bank of its own: others of this run may have put trays and tests on its lots */
  ownBank: string;
}

/** A test with a server of its own on a copy of a prepared bank, one for each test file and bank. */
export const test = base.extend<
  { consoleIsClean: undefined },
  BankOptions & { bankDirectory: string; server: RunningServer }
>({
  bank: ['demo', { option: true, scope: 'worker' }],
  ownBank: ['', { option: true, scope: 'worker' }],
  bankDirectory: [
    async ({ bank, ownBank }, use) => {
      const directory = mkdtempSync(path.join(tmpdir(), `hilum-e2e-${ownBank}-`));
      cpSync(path.join(BANKS, bank), directory, { recursive: true });
      await use(directory);
      rmSync(directory, { recursive: true, force: true });
    },
    { scope: 'worker' },
  ],
  server: [
    async ({ bankDirectory }, use) => {
      const server = await startServer({ dataDirectory: bankDirectory, env: { HILUM_TODAY: TEST_TODAY } });
      await use(server);
      await server.stop();
    },
    { scope: 'worker' },
  ],
  baseURL: async ({ server }, use) => use(server.address),
  // A page that logs an error is a failing page, whatever else the test looks at.
  consoleIsClean: [
    async ({ page }, use) => {
      const errors: string[] = [];
      page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
      page.on('pageerror', (error) => errors.push(String(error)));
      await use(undefined);
      const unexpected = errors.filter((text) => !/status of (403|404)|ERR_INTERNET_DISCONNECTED/.test(text));
      base.expect(unexpected, 'errors in the browser console').toEqual([]);
    },
    { auto: true },
  ],
});

export { expect } from '@playwright/test';
