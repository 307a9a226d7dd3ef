/**
 * How soon the bench answers a finger, in a browser whose processor is slowed down four times, with two hundred open
 * trays. A delay is what the browser itself reports of an interaction: from the touch to the next paint, in steps of 8 ms;
 * what takes less than 16 ms is not reported and counts as 16. Of it, 'processing' is the time in event
 * handlers. Other work on the machine lengthens all of it: what the code takes is nearer to the shortest than to the longest.
 * A bare button on an empty page is measured beside it: less than that no page can take on this machine.
 * Arguments: the address of a running server. Prints one line of JSON, TapFigures[].
 */
import { chromium, type Locator, type Page } from '@playwright/test';

export interface TapFigures {
  name: string;
  taps: number;
  /** milliseconds from touch to next paint */
  shortest: number;
  p50: number;
  p95: number;
  longest: number;
  /** milliseconds of it in event handlers, ours and the framework's */
  processingP50: number;
  longestProcessing: number;
}

const SLOWED_DOWN = 4;
const SHORTEST_REPORTED_MS = 16;
const ROUNDS = 20;

interface Reported {
  interactionId: number;
  duration: number;
  processing: number;
}

const address = process.argv[2];
if (!address) throw new Error('the address of a running server is needed');
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM || '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu'],
});
const context = await browser.newContext({
  viewport: { width: 360, height: 740 },
  hasTouch: true,
  isMobile: true,
  serviceWorkers: 'block',
});
const page = await context.newPage();
await page.addInitScript(() => {
  const reported: unknown[] = [];
  Object.assign(window, { reported });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries() as PerformanceEventTiming[]) {
      const { interactionId, duration, processingStart, processingEnd } = entry;
      if (interactionId) reported.push({ interactionId, duration, processing: processingEnd - processingStart });
    }
  }).observe({ type: 'event', durationThreshold: 16, buffered: true } as PerformanceObserverInit);
});
const devtools = await context.newCDPSession(page);
await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWED_DOWN });

const seen = new Map<string, Reported[]>();
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: typeof name === 'string' });

/**
 * One tap, and what was reported of it; nothing when it took less than is reported. It is the touch alone: the checks with
 * which the browser's driver goes along when it taps by itself would be measured too.
 */
async function measure(name: string, what: Locator): Promise<void> {
  await what.scrollIntoViewIfNeeded();
  await settled(page);
  const box = await what.boundingBox();
  if (!box) throw new Error(`not in sight: ${name}`);
  await page.evaluate(() => {
    (window as unknown as { reported: Reported[] }).reported.length = 0;
  });
  await page.touchscreen.tap(box.x + box.width / 2, box.y + box.height / 2);
  await settled(page);
  const reported = await page.evaluate(() => (window as unknown as { reported: Reported[] }).reported);
  const longest = reported.reduce<Reported>(
    (worst, one) => ({
      interactionId: one.interactionId,
      duration: Math.max(worst.duration, one.duration),
      processing: Math.max(worst.processing, one.processing),
    }),
    { interactionId: 0, duration: SHORTEST_REPORTED_MS, processing: 0 },
  );
  seen.set(name, [...(seen.get(name) ?? []), longest]);
}

/** Two paints later, and when the browser has nothing more to do: its report is there. */
async function settled(on: Page): Promise<void> {
  await on.evaluate(
    () =>
      new Promise<void>((done) =>
        requestAnimationFrame(() => requestAnimationFrame(() => requestIdleCallback(() => done(), { timeout: 1000 }))),
      ),
  );
}

const BARE = '<!doctype html><meta name="viewport" content="width=device-width"><button>tap</button>';
await page.route('**/bare', (route) => route.fulfill({ contentType: 'text/html', body: BARE }));
await page.goto(`${address}/bare`);
for (let round = 0; round < ROUNDS; round += 1) await measure('a bare button on an empty page', button('tap'));

await page.goto(`${address}/bench`);
await page.getByText(/\d+ trays to count/).waitFor();
const rows = page.getByRole('link', { name: /^T-9/ });
for (let round = 0; round < ROUNDS; round += 1) {
  await measure('open a tray from the list', rows.nth(round % 6));
  await measure('tap a seed', page.locator('[data-dish] [data-mark="left"]').nth(round));
  await measure('plus', button('One normal more'));
  await measure('a digit', button('7'));
  await measure('undo', button('Undo'));
  await measure('another dish', button(/^Dish 2:/));
  await measure('back to the list', button('All trays'));
}
for (let round = 0; round < ROUNDS; round += 1) {
  if (round === 0) await rows.nth(10).tap();
  await settled(page);
  await button(/^Dish 1:/).tap();
  await measure('nothing new in a tray', button('None new in all 4'));
  await measure('done, next tray', button('Done'));
}
await browser.close();

const figures: TapFigures[] = [...seen].map(([name, taps]) => {
  const durations = taps.map(({ duration }) => duration).sort((a, b) => a - b);
  const processing = taps.map((tap) => tap.processing).sort((a, b) => a - b);
  return {
    name,
    taps: taps.length,
    shortest: durations[0] as number,
    p50: quantile(durations, 0.5),
    p95: quantile(durations, 0.95),
    longest: durations.at(-1) as number,
    processingP50: quantile(processing, 0.5),
    longestProcessing: processing.at(-1) as number,
  };
});
process.stdout.write(`${JSON.stringify(figures)}\n`);

/** The value that this share of the sorted values does not exceed. */
function quantile(sorted: readonly number[], share: number): number {
  return sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] as number;
}
