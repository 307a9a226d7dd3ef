import { expect, test } from './support/bank';
import { expectReadable, lookIn, MODES } from './support/readable';

/** 'about 1 240 seeds' with thin spaces in it, as a number. */
const numberIn = (text: string | null) => Number((text ?? '').replace(/[^\d]/g, ''));

test('a stock-take with one packet short and one over: counted, reviewed, closed, and the ledger agrees', async ({
  page,
}) => {
  const packets: { number: string; expected: number }[] = [];
  const field = () => page.getByLabel('Code of a packet, or its seeds');
  const enter = async (text: string, answer: RegExp) => {
    await field().fill(text);
    await field().press('Enter');
    await expect(page.getByRole('status').filter({ hasText: answer })).toBeVisible();
    await expect(field()).toBeFocused();
    await expect(field()).toHaveValue('');
  };

  await test.step('start in the freezer', async () => {
    await page.goto('/stores/stock-takes');
    await page.getByLabel('Store', { exact: true }).selectOption({ label: 'Chest freezer' });
    await page.getByRole('button', { name: 'Start' }).click();
    await expect(page.getByRole('heading', { level: 1 })).toContainText('ST-2026-01');
    const rows = page.getByRole('region', { name: /Still to look at/ }).getByRole('listitem');
    for (const row of (await rows.all()).slice(0, 3)) {
      const number = (await row.locator('b').first().textContent()) as string;
      packets.push({
        number,
        expected: numberIn(/about ([^a-z]+) seeds/.exec((await row.textContent()) ?? '')?.[1] ?? ''),
      });
    }
    expect(packets).toHaveLength(3);
  });

  const [short, over, right] = packets as [(typeof packets)[0], (typeof packets)[0], (typeof packets)[0]];

  await test.step('count three packets through the one field', async () => {
    await enter(short.number, new RegExp(`${short.number}.*: here`));
    await enter(String(short.expected - 37), new RegExp(`${short.number}.* seeds`));
    await enter(over.number.toLowerCase(), new RegExp(`${over.number}.*: here`));
    await enter(`${over.expected + 12} seeds`, new RegExp(`${over.number}.* seeds`));
    await enter(`https://seedroom.example/p/${right.number}`, new RegExp(`${right.number}.*: here`));
    await enter('no such code', /There is no packet or lot/);
  });

  await test.step('what was entered is there after the page is loaded again', async () => {
    await page.reload();
    await expect(page.getByText(/3 of \d+ looked at/)).toBeVisible();
    await expect(page.getByRole('row', { name: new RegExp(short.number) })).toContainText('−37');
  });

  await test.step('counting and review are readable on phone and laptop, light and dark', async () => {
    const counting = new URL(page.url()).pathname;
    for (const address of [counting, `${counting}/review`]) {
      await page.goto(address);
      for (const mode of MODES) {
        await lookIn(page, mode);
        await expectReadable(page, `${address}, ${mode.width} px, ${mode.colorScheme}`);
      }
    }
    await page.goto(counting);
  });

  await test.step('review shows the two differences, and closing wants a decision for each', async () => {
    await page.getByRole('link', { name: 'Review' }).click();
    await expect(page.getByText('2 packets need a decision.')).toBeVisible();
    await page.getByLabel(`What to do about ${short.number}`).selectOption('');
    await page.getByLabel(/Close although/).check();
    await page.getByRole('button', { name: 'Close the stock-take' }).click();
    await expect(page.getByText('Choose what to do about this difference.').first()).toBeVisible();
    await page.getByLabel(`What to do about ${short.number}`).selectOption('correct');
    await page.getByLabel(`What to do about ${over.number}`).selectOption('correct');
    await page.getByRole('button', { name: 'Close the stock-take' }).click();
    await expect(page.getByText(/Closed on 25 Nov 2026/)).toBeVisible();
    await expect(page.getByText(/3 packets looked at, 2 corrected, 0 written off, 0 placed here/)).toBeVisible();
  });

  await test.step('the ledger has two count corrections, and the packets hold what was counted', async () => {
    await page.goto('/stores/ledger?reason=count');
    await expect(page.getByText(/2 lines: 12 seeds in, 37 out/)).toBeVisible();
    await expect(page.getByRole('row', { name: new RegExp(short.number) })).toContainText('count correction');
    await page.goto(`/stores/packets/${short.number}`);
    await expect(
      page.getByText(new RegExp(`counted ${short.expected - 37}, ledger ${short.expected}`)).first(),
    ).toBeVisible();
    await page.goto(`/stores/ledger?reason=count&q=${over.number}`);
    await expect(page.getByText(/1 line: 12 seeds in, 0 out/)).toBeVisible();
  });
});
