import { X509Certificate } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { type Browser, type BrowserContext, chromium, expect, type Page, test } from '@playwright/test';
import sharp from 'sharp';
import { decodeCodes } from '../support/labels/decode';
import { BANKS, TEST_TODAY } from './support/prepare-banks';
import { expectReadable, lookIn, MODES } from './support/readable';
import { trustOf } from './support/start-door';
import { type RunningServer, startServer } from './support/start-server';

/** Phones come in over https: the certificate, the page that leads to trusting it, and what only https gives. */
const SETUP_CODE = 'seed-drawer-12';
/** Known in the house’s network alone, so nothing here opens it. */
const ADDRESS = 'https://seedroom.home.arpa:4310';
const PASSWORD = 'one ripe leek in rain';

test.describe.configure({ mode: 'serial' });

let directory: string;
let server: RunningServer;
/** A browser that trusts the bank's certificate. */
let browserOfBank: Browser;
let phone: BrowserContext;

const copyOfBank = () => {
  const copy = mkdtempSync(path.join(tmpdir(), 'hilum-tls-'));
  cpSync(path.join(BANKS, 'demo'), copy, { recursive: true });
  return copy;
};

test.beforeAll(async () => {
  directory = copyOfBank();
  server = await startServer({
    dataDirectory: directory,
    tls: true,
    env: { HILUM_TODAY: TEST_TODAY, HILUM_SETUP_CODE: SETUP_CODE, HILUM_ADDRESS: ADDRESS },
  });
  const options = test.info().project.use.launchOptions ?? {};
  browserOfBank = await chromium.launch({ ...options, args: [...(options.args ?? []), trustOf(directory)] });
  phone = await browserOfBank.newContext({ baseURL: server.address, viewport: { width: 390, height: 844 } });
});
test.afterAll(async () => {
  await browserOfBank?.close();
  await server?.stop();
  rmSync(directory, { recursive: true, force: true });
});

test('a browser that was not told to trust the bank warns', async ({ page }) => {
  await expect(page.goto(server.address)).rejects.toThrow(/ERR_CERT_AUTHORITY_INVALID/);
});

test('whoever signs in over https has a secure page, a Secure cookie and service workers', async () => {
  const page = await phone.newPage();
  const errors = errorsOf(page);
  await page.goto('/');
  await page.getByLabel('Setup code').fill(SETUP_CODE);
  await page.getByLabel('Your name').fill('Ada');
  await page.getByLabel('Sign-in name').fill('ada');
  await page.getByLabel('Password').fill(PASSWORD);
  await page.getByRole('button', { name: 'Open the bank' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Today' })).toBeVisible();
  expect(page.url()).toBe(`${server.address}/`);
  const cookies = await phone.cookies();
  expect(cookies.map(({ name, secure, httpOnly, sameSite }) => ({ name, secure, httpOnly, sameSite }))).toEqual([
    { name: '__Secure-hilum.session_token', secure: true, httpOnly: true, sameSite: 'Lax' },
  ]);
  const given = await page.evaluate(() => ({
    origin: location.origin,
    isSecureContext,
    serviceWorker: 'serviceWorker' in navigator,
    camera: 'mediaDevices' in navigator,
  }));
  expect(given).toEqual({ origin: server.address, isSecureContext: true, serviceWorker: true, camera: true });
  expect(errors()).toEqual([]);
  await page.close();
});

test('signing out and in again works over https, and the session is kept with the address of the phone', async () => {
  const page = await phone.newPage();
  await page.goto('/settings/account');
  await expect(page.getByText('127.0.0.1').first()).toBeVisible();
  await page.getByRole('button', { name: 'Sign out', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Sign in' })).toBeVisible();
  expect(await phone.cookies()).toEqual([]);
  await page.getByLabel('Sign-in name').fill('ada');
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Today' })).toBeVisible();
  await page.close();
});

test('the computer itself opens Hilum without TLS, and signs in for itself', async ({ page }) => {
  await page.goto(`http://127.0.0.1:${server.port}/`);
  await page.getByLabel('Sign-in name').fill('ada');
  await page.getByLabel('Password', { exact: true }).fill(PASSWORD);
  await page.getByRole('button', { name: 'Sign in' }).click();
  await expect(page.getByRole('heading', { level: 1, name: 'Today' })).toBeVisible();
  const cookies = await page.context().cookies();
  expect(cookies.map(({ name, secure }) => ({ name, secure }))).toEqual([
    { name: 'hilum.session_token', secure: false },
  ]);
});

test('a page of another site gets nothing done over https either', async () => {
  const page = await phone.newPage();
  await page.goto('/sign-in');
  const answer = await fetch(`http://127.0.0.1:${server.port}/settings`, {
    method: 'POST',
    headers: { Origin: 'https://attacker.example', 'X-Forwarded-Host': 'attacker.example' },
  });
  expect(answer.status).toBe(403);
  await page.close();
});

test('no page asks browsers to refuse plain http for ever: the authority is the bank’s own', async () => {
  const answer = await fetch(`http://127.0.0.1:${server.port}/phone`);
  expect(answer.headers.get('strict-transport-security')).toBeNull();
});

test('the page for a new phone is open to anybody, readable, and has the authority’s fingerprint', async () => {
  const stranger = await browserOfBank.newContext({ baseURL: server.address });
  const page = await stranger.newPage();
  const errors = errorsOf(page);
  const { fingerprint256 } = new X509Certificate(readFileSync(path.join(directory, 'tls', 'authority.pem')));
  for (const mode of MODES) {
    await lookIn(page, mode);
    await page.goto('/phone');
    await expect(page.getByRole('heading', { level: 1, name: 'Hilum on your phone' })).toBeVisible();
    const shown = await page.locator('.figures.grid').textContent();
    expect(shown?.replace(/\s/g, '')).toBe(fingerprint256.replaceAll(':', ''));
    await expect(page.getByRole('img', { name: /QR code/ })).toBeVisible({ visible: mode.width > 390 });
    await expectReadable(page, `/phone at ${mode.width} ${mode.colorScheme}`);
  }
  expect(errors()).toEqual([]);
  await stranger.close();
});

test('the code on the screen leads a phone’s camera to this page under an address of the certificate', async () => {
  const page = await (await browserOfBank.newContext({ baseURL: server.address })).newPage();
  await page.goto('/phone');
  const code = page.getByRole('img', { name: /QR code/ });
  const door = new X509Certificate(readFileSync(path.join(directory, 'tls', 'door.pem')));
  expect(door.checkHost(new URL(ADDRESS).hostname)).toBeDefined();
  const { data, info } = await sharp(await code.screenshot())
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  expect(await decodeCodes({ width: info.width, height: info.height, grey: new Uint8Array(data) })).toEqual([
    `${ADDRESS}/phone`,
  ]);
  await page.context().close();
});

test('the certificate that phones are given is the authority’s, in a file named for it, and never its key', async () => {
  const page = await (await browserOfBank.newContext({ baseURL: server.address })).newPage();
  await page.goto('/phone');
  const downloading = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Get the certificate' }).click();
  const download = await downloading;
  expect(download.suggestedFilename()).toMatch(/^hilum-on-[a-z0-9-]+\.crt$/);
  const given = readFileSync(await download.path());
  const authority = new X509Certificate(readFileSync(path.join(directory, 'tls', 'authority.pem')));
  expect(given.equals(authority.raw)).toBe(true);
  const answer = await fetch(`http://127.0.0.1:${server.port}/api/authority`);
  expect(answer.headers.get('content-type')).toBe('application/x-x509-ca-cert');
  await page.context().close();
});

test('a phone can put Hilum on its home screen: it opens at the bench, with pictures of the promised size', async () => {
  const page = await phone.newPage();
  await page.goto('/phone');
  const manifest = await page.evaluate(async () => {
    const link = document.querySelector<HTMLLinkElement>('link[rel=manifest]');
    return (await fetch(link?.href ?? '')).json();
  });
  expect(manifest).toMatchObject({ name: 'Hilum', start_url: '/bench', scope: '/', display: 'standalone' });
  for (const { src, sizes } of [...manifest.icons, { src: await appleIcon(page), sizes: '180x180' }]) {
    const bytes = await page.evaluate(
      async (from) => [...new Uint8Array(await (await fetch(from)).arrayBuffer())],
      src,
    );
    const { width, height, format } = await sharp(Buffer.from(bytes)).metadata();
    expect({ src, format, size: `${width}x${height}` }).toEqual({ src, format: 'png', size: sizes });
  }
  await page.close();
});

test('on this computer alone the page says how to start Hilum for phones', async ({ page }) => {
  const copy = copyOfBank();
  const alone = await startServer({ dataDirectory: copy, env: { HILUM_TODAY: TEST_TODAY } });
  try {
    for (const mode of MODES) {
      await lookIn(page, mode);
      await page.goto(`${alone.address}/phone`);
      await expect(page.getByText('HOST=0.0.0.0 npm run up')).toBeVisible();
      await expectReadable(page, `/phone alone at ${mode.width} ${mode.colorScheme}`);
    }
    expect((await page.goto(`${alone.address}/api/authority`))?.status()).toBe(404);
    await page.goto(`${alone.address}/settings`);
    await page.getByRole('link', { name: 'On your phone' }).click();
    await expect(page.getByRole('heading', { name: 'Hilum on your phone' })).toBeVisible();
  } finally {
    await alone.stop();
    rmSync(copy, { recursive: true, force: true });
  }
});

/** What a page tells the console as errors: it should tell nothing. */
function errorsOf(page: Page): () => string[] {
  const errors: string[] = [];
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(String(error)));
  return () => errors;
}

const appleIcon = (page: Page) =>
  page.evaluate(() => document.querySelector<HTMLLinkElement>('link[rel=apple-touch-icon]')?.href ?? '');
