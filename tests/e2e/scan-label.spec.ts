import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { expect, test } from './support/bank';
import { labelPicture, pngOf, writeFilm } from './support/label-film';
import type { RunningServer } from './support/start-server';

/** Seed of the demo that lies in the cool pantry: 920 seeds of an oat. */
const PACKET = 'P-00012';

/** The label that the running app prints for the packet. */
async function printedLabel(server: RunningServer) {
  const answer = await fetch(`${server.address}/api/labels?packets=${PACKET}&format=roll-62x29`);
  expect(answer.status).toBe(200);
  expect(answer.headers.get('content-type')).toBe('application/pdf');
  return labelPicture(new Uint8Array(await answer.arrayBuffer()));
}

test('a printed label held before the camera is found, and seed taken out of its packet for a test', async ({
  server,
  launchOptions,
}) => {
  const directory = mkdtempSync(path.join(tmpdir(), 'hilum-film-'));
  const film = path.join(directory, 'label.y4m');
  writeFilm(film, await printedLabel(server));
  const browser = await chromium.launch({
    ...launchOptions,
    args: [
      ...(launchOptions.args ?? []),
      '--use-fake-ui-for-media-stream',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${film}`,
    ],
  });
  try {
    const context = await browser.newContext({ baseURL: server.address, permissions: ['camera'] });
    const page = await context.newPage();
    const elsewhere: string[] = [];
    page.on('request', (request) => {
      if (!/^(blob|data):/.test(request.url())) elsewhere.push(new URL(request.url()).origin);
    });
    const errors: string[] = [];
    page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto('/');
    await page.getByRole('link', { name: 'Scan a label' }).click();

    const card = page.getByRole('region', { name: `Found packet ${PACKET}` });
    await expect(card).toBeVisible({ timeout: 30_000 });
    await expect(card).toContainText('Small Sand');
    await expect(card).toContainText('920');
    await expect(page.locator('[aria-live="polite"]', { has: card })).toBeVisible();
    expect(new Set(elsewhere), 'the decoder comes from this server').toEqual(new Set([server.address]));

    await page.evaluate(() => {
      const stream = document.querySelector('video')?.srcObject as MediaStream | null | undefined;
      (window as unknown as { track?: MediaStreamTrack | undefined }).track = stream?.getVideoTracks()[0];
    });
    await card.getByRole('link', { name: 'Take seed out' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText('Take seed out');
    const state = await page.evaluate(() => (window as unknown as { track?: MediaStreamTrack }).track?.readyState);
    expect(state, 'the camera is off once the page is left').toBe('ended');

    await page.getByLabel('How much').fill('50');
    await page.getByLabel('For', { exact: true }).selectOption('test');
    await page.getByRole('button', { name: 'Take it out' }).click();
    await expect(page).toHaveURL(new RegExp(`/stores/packets/${PACKET}`));
    await page.goto(`/stores/scan?code=${PACKET}`);
    await expect(card).toContainText('870');
    expect(errors).toEqual([]);
  } finally {
    await browser.close();
    rmSync(directory, { recursive: true, force: true });
  }
});

test('a photograph of a label is read, as is a number that is typed or comes from a hand scanner', async ({
  page,
  server,
}) => {
  await page.goto('/stores/scan');
  const card = page.getByRole('region', { name: `Found packet ${PACKET}` });

  await test.step('a photograph', async () => {
    const buffer = pngOf(await printedLabel(server));
    await page
      .getByLabel('Take a picture of the label')
      .setInputFiles({ name: 'label.png', mimeType: 'image/png', buffer });
    await expect(card).toBeVisible({ timeout: 30_000 });
  });

  await test.step('a photograph of nothing says so', async () => {
    await card.getByRole('link', { name: 'Scan the next' }).click();
    await expect(card).toBeHidden();
    const blank = pngOf({ width: 64, height: 64, grey: new Uint8Array(64 * 64).fill(200), text: '' });
    await page
      .getByLabel('Take a picture of the label')
      .setInputFiles({ name: 'blank.png', mimeType: 'image/png', buffer: blank });
    await expect(page.getByText('No code was found in it.')).toBeVisible();
  });

  await test.step('a hand scanner types and presses Enter', async () => {
    await typed(page, 'p12');
    await expect(card).toBeVisible();
    await expect(page.getByLabel('Number, or hand scanner')).toHaveValue('');
    await typed(page, `https://another-name.example/p/${PACKET}`);
    await expect(card).toBeVisible();
  });

  await test.step('an unknown number is told beside the field, which keeps it', async () => {
    await typed(page, 'P-99999');
    await expect(page.getByLabel('Number, or hand scanner')).toHaveValue('P-99999');
    await expect(page.getByLabel('Number, or hand scanner')).toHaveAttribute('aria-invalid', 'true');
    await page.goto('/p/P-99999');
    await expect(page.getByRole('heading', { name: 'No such packet' })).toBeVisible();
    await page.goto(`/p/${PACKET}`);
    await expect(page).toHaveURL(new RegExp(`/stores/packets/${PACKET}`));
  });
});

test('a store’s labels are chosen at once, begun on a used sheet, and shown as they will be printed', async ({
  page,
}) => {
  await page.goto('/stores/labels');
  await page.getByLabel('Lying in').selectOption({ label: 'Cool pantry' });
  await page.getByRole('button', { name: 'Find' }).click();
  await page.getByRole('button', { name: /^Add all \d+ found$/ }).click();
  await expect(page.getByText(/^\d+ packets chosen$/)).toBeVisible();
  await page.getByLabel('Begin at label').fill('3');
  await page.getByRole('button', { name: 'Show' }).click();
  await expect(page.getByRole('img', { name: /^Preview of sheet 1 of \d+: 22 labels$/ })).toBeVisible();

  await page.getByLabel('Begin at label').fill('25');
  await page.getByRole('button', { name: 'Show' }).click();
  await expect(page.getByText('This sheet has 24 labels: write 1 to 24.')).toBeVisible();
  await expect(page.getByLabel('Begin at label')).toHaveValue('25');
});

test('a label size that does not fit its page is refused beside the field and keeps what was typed', async ({
  page,
}) => {
  await page.goto('/stores/labels/formats/new');
  await page.getByLabel('Name').fill('Jar labels');
  await page.getByLabel('Label width').fill('60');
  await page.getByLabel('Label height').fill('40,5');
  await page.getByLabel('Labels across').fill('4');
  await page.getByRole('button', { name: 'Add it' }).click();
  await expect(page.getByLabel('Labels across')).toHaveAttribute('aria-invalid', 'true');
  await expect(page.getByLabel('Label height')).toHaveValue('40,5');
  await page.getByLabel('Labels across').fill('3');
  await page.getByLabel('Labels down').fill('7');
  await expect(page.getByRole('img', { name: 'A page of 210 × 297 mm with 21 labels' })).toBeVisible();
  await page.getByRole('button', { name: 'Add it' }).click();
  await expect(page.getByRole('listitem').filter({ hasText: 'Jar labels' })).toContainText(
    '60 × 40.5 mm, 21 on a sheet',
  );
  await page.goto('/stores/labels');
  await expect(page.getByLabel('Labels', { exact: true }).locator('option', { hasText: 'Jar labels' })).toHaveCount(1);
});

async function typed(page: Page, code: string): Promise<void> {
  await page.getByLabel('Number, or hand scanner').fill(code);
  await page.getByLabel('Number, or hand scanner').press('Enter');
}
