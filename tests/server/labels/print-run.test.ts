import { describe, expect, test } from 'vitest';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { labelsPdf } from '@/lib/server/labels/labels-pdf';
import { allPages, pageOfRun, pagesOf, remarksOn } from '@/lib/server/labels/print-run';
import { labelOfBag, labelOfPacket } from '@/tests/support/labels/label-to-print';

const formatOf = (key: string) => {
  const format = COMMON_FORMATS.find((one) => one.key === key);
  if (!format) throw new Error(key);
  return format;
};
const numbered = (count: number, changes = {}, address: string | null = null) =>
  Array.from({ length: count }, (_, index) =>
    labelOfPacket({ packetNumber: `P-${String(index + 1).padStart(5, '0')}`, ...changes }, address),
  );
const ADDRESS = 'https://seedroom.example:4300';
const run = { start: 1, copies: 1, shiftXMm: 0, shiftYMm: 0 };

describe('a print run', () => {
  test('the preview of a page is the page of the PDF', async () => {
    const labels = { format: formatOf('a4-24'), run, texts: numbered(30) };
    const all = await allPages(labels);
    if (!all.ok) throw new Error(all.problem.reason);
    expect(pagesOf(labels)).toBe(2);
    expect(pageOfRun(labels, 1)).toEqual({ ok: true, page: all.pages[1] });
    expect(all.pages[1]?.labels).toHaveLength(6);
  });

  test('remarks are those of the labels as they are laid out', () => {
    const labels = {
      format: formatOf('a4-65'),
      run,
      texts: [
        ...numbered(3, {}, ADDRESS),
        ...numbered(2, { accessionName: 'Sehr lange Sorte '.repeat(9), cropName: '甘蓝' }, ADDRESS),
      ],
    };
    const remarks = remarksOn(labels);
    const laid = pageOfRun(labels, 0);
    if (!laid.ok) throw new Error(laid.problem.reason);
    const leftOut = laid.page.labels.filter(({ drawing }) => drawing.leftOut.includes('place')).length;
    expect(leftOut).toBeGreaterThan(0);
    expect(remarks.leftOut.get('place')).toBe(leftOut);
    expect(remarks.cut.get('name')).toBe(2);
    expect(remarks.missing).toEqual(['甘', '蓝']);
    expect(remarks.refused).toBeNull();
  });

  test('the first label that cannot be printed is named, and no PDF is made of the others', async () => {
    const texts = [...numbered(2), labelOfPacket({ packetNumber: 'P-00077', lotNumber: 'W'.repeat(40) })];
    const labels = { format: formatOf('a4-65'), run, texts };
    expect(remarksOn(labels).refused).toMatchObject({ called: 'P-00077', problem: { reason: 'text-too-long' } });
    expect(await allPages(labels)).toMatchObject({ ok: false, called: 'P-00077' });
  });

  test('numbers as long as each other may have codes of two sizes: the one that does not fit is found', () => {
    // Small letters make a larger QR code than capitals; 11.5 mm have room for the smaller one only.
    const format = { ...formatOf('roll-50x25'), pageHeightMm: 14, labelHeightMm: 14 };
    const texts = ['HOLM-2019-00003B', 'holm-2019-00003b'].map((lotNumber) => labelOfBag({ lotNumber }));
    const { refused } = remarksOn({ format, run, texts });
    expect(refused).toMatchObject({ called: 'the bag of holm-2019-00003b', problem: { reason: 'code-too-small' } });
  });

  test('five hundred labels are one PDF', async () => {
    const labels = { format: formatOf('a4-24'), run, texts: numbered(500, {}, 'https://seedroom.example') };
    const begun = process.cpuUsage();
    const all = await allPages(labels);
    if (!all.ok) throw new Error(all.problem.reason);
    const pdf = await labelsPdf(all.pages);
    const { user, system } = process.cpuUsage(begun);
    if (process.env.HILUM_MEASURE) {
      process.stdout.write(`500 labels: ${((user + system) / 1e6).toFixed(1)} s of processor, ${pdf.length} bytes\n`);
    }
    expect(all.pages).toHaveLength(21);
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  }, 120_000);
});
