import { beforeAll, describe, expect, test } from 'vitest';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { CODE_KINDS, labelsPerPage } from '@/lib/domain/labels/label-format';
import { type LabelPage, layoutPage } from '@/lib/domain/labels/layout-pages';
import { readCode } from '@/lib/domain/labels/read-code';
import { encodeCode } from '@/lib/server/labels/encode-code';
import { labelsPdf } from '@/lib/server/labels/labels-pdf';
import { cutOut, decodeCodes, type GreyImage } from '@/tests/support/labels/decode';
import {
  FULLEST_BAG,
  FULLEST_DISH,
  labelOfBag,
  labelOfDish,
  labelOfPacket,
} from '@/tests/support/labels/label-to-print';
import { type PrintedPage, renderPdf } from '@/tests/support/labels/render-pdf';

/** A label printer's head, and a finer one or an office printer. */
const RESOLUTIONS = [203, 300] as const;
const ADDRESS = 'https://seedroom.example:4300';
const NAMES = [
  'Westness Black Kale',
  'Łódź Äpfelgrün ß, née Señorita, a name so long that it has to be broken over lines and cut in the end',
  'Капуста чорна',
];
const NO_SHIFT = { shiftXMm: 0, shiftYMm: 0 };

/** A whole page: every place has a label, names long and short, every third treated, codes bare or addresses. */
function fullPage(format: (typeof COMMON_FORMATS)[number], kind: 'qr' | 'data-matrix', address: string | null) {
  const labels = Array.from({ length: labelsPerPage(format) }, (_, index) => {
    const number = `P-${String(10_007 + 37 * index).padStart(5, '0')}`;
    const text = labelOfPacket(
      {
        packetNumber: number,
        accessionName: NAMES[index % NAMES.length] ?? '',
        treatment: index % 3 === 1 ? 'thiram' : null,
      },
      address,
    );
    return { number, label: { text, code: encodeCode(kind, text.codeText) } };
  });
  const laid = layoutPage(
    format,
    labels.map(({ label }) => label),
    NO_SHIFT,
  );
  if (!laid.ok) throw new Error(`${format.name}: ${laid.problem.reason}`);
  return { page: laid.page, numbers: labels.map(({ number }) => number) };
}

/** Each label of a printed page by itself, as it lies before a camera: the numbers that a decoder reads. */
async function numbersOn(format: (typeof COMMON_FORMATS)[number], page: LabelPage, printed: GreyImage, dots: number) {
  const read = await codesOn(format, page, printed, dots);
  return read.map((text) => (text === undefined ? undefined : readCode(text)?.number));
}

async function codesOn(format: (typeof COMMON_FORMATS)[number], page: LabelPage, printed: GreyImage, dots: number) {
  const read: (string | undefined)[] = [];
  for (const { xMm, yMm } of page.labels) {
    const dot = (mm: number) => Math.round((mm / 25.4) * dots);
    const label = cutOut(printed, dot(xMm), dot(yMm), dot(format.labelWidthMm), dot(format.labelHeightMm));
    const [text] = await decodeCodes(label);
    read.push(text);
  }
  return read;
}

describe.each(RESOLUTIONS)('labels printed at %i dots an inch', (dots) => {
  describe.each(COMMON_FORMATS.map((format) => [format.name, format] as const))('%s', (_, format) => {
    for (const { key: kind, label: kindLabel } of CODE_KINDS) {
      for (const address of [null, ADDRESS]) {
        test(`every ${kindLabel} with ${address ? 'an address' : 'a bare number'} is read back`, async () => {
          const { page, numbers } = fullPage(format, kind, address);
          const [printed] = await renderPdf(await labelsPdf([page]), dots);
          if (!printed) throw new Error('no page');
          expect(await numbersOn(format, page, printed, dots)).toEqual(numbers);
        });
      }
    }
  });
});

/** Bags of a request on a whole page: every second bears all that there can be, every third has a number of the bank's own. */
function fullPageOfBags(format: (typeof COMMON_FORMATS)[number], address: string | null) {
  const labels = Array.from({ length: Math.max(4, labelsPerPage(format)) }, (_, index) => {
    const number =
      index % 3 === 2 && address ? `Holm ${index}/3` : `L-2024-${String(101 + 37 * index).padStart(4, '0')}`;
    const text = labelOfBag({ ...(index % 2 === 1 ? FULLEST_BAG : {}), lotNumber: number }, address);
    return { number, label: { text, code: encodeCode('qr', text.codeText) } };
  });
  const perPage = labelsPerPage(format);
  const pages: LabelPage[] = [];
  for (let at = 0; at < labels.length; at += perPage) {
    const places = labels.slice(at, at + perPage).map(({ label }) => label);
    const laid = layoutPage(format, places, NO_SHIFT);
    if (!laid.ok) throw new Error(`${laid.called} on ${format.name}: ${laid.problem.reason}`);
    pages.push(laid.page);
  }
  return { pages, numbers: labels.map(({ number }) => number) };
}

describe('labels of bags that are given away, printed at 203 dots an inch', () => {
  // The smallest sheet and the smallest roll.
  for (const key of ['a4-65', 'roll-50x25']) {
    for (const address of [null, ADDRESS]) {
      test(`on ${key} every code with ${address ? 'an address' : 'a bare number'} is read back as its lot`, async () => {
        const format = COMMON_FORMATS.find((one) => one.key === key);
        if (!format) throw new Error('no format');
        const { pages, numbers } = fullPageOfBags(format, address);
        const printed = await renderPdf(await labelsPdf(pages), 203);
        const read: (string | undefined)[] = [];
        for (const [index, page] of pages.entries()) {
          const image = printed[index];
          if (image) read.push(...(await numbersOn(format, page, image, 203)));
        }
        expect(read).toEqual(numbers);
      });
    }
  }
});

/** Dishes of tests on a whole page; every second bears all that there can be. What a decoder reads is tray and dish. */
async function dishesReadBack(
  format: (typeof COMMON_FORMATS)[number],
  kind: 'qr' | 'data-matrix',
  address: string | null,
) {
  const labels = Array.from({ length: labelsPerPage(format) }, (_, index) => {
    const trayNumber = `T-${String(101 + 37 * Math.floor(index / 4)).padStart(4, '0')}`;
    const dish = { ...(index % 2 === 1 ? FULLEST_DISH : {}), trayNumber, dish: (index % 4) + 1, dishes: 4 };
    const text = labelOfDish(dish, address);
    return {
      wanted: { kind: 'tray', number: trayNumber, dish: dish.dish },
      text,
      code: encodeCode(kind, text.codeText),
    };
  });
  const laid = layoutPage(format, labels, NO_SHIFT);
  if (!laid.ok) throw new Error(`${laid.called} on ${format.name}: ${laid.problem.reason}`);
  const [printed] = await renderPdf(await labelsPdf([laid.page]), 203);
  if (!printed) throw new Error('no page');
  const read = (await codesOn(format, laid.page, printed, 203)).map((text) => (text ? readCode(text) : null));
  return { read, wanted: labels.map(({ wanted }) => wanted) };
}

describe('labels of dishes, printed at 203 dots an inch', () => {
  for (const key of ['a4-65', 'a4-24', 'roll-50x25']) {
    for (const kind of ['qr', 'data-matrix'] as const) {
      for (const address of [null, ADDRESS]) {
        test(`on ${key} every ${kind} with ${address ? 'an address' : 'a bare number'} is read back as its tray and dish`, async () => {
          const format = COMMON_FORMATS.find((one) => one.key === key);
          if (!format) throw new Error('no format');
          const { read, wanted } = await dishesReadBack(format, kind, address);
          expect(read).toEqual(wanted);
        });
      }
    }
  }
});

describe('worn prints', () => {
  // The smallest labels: codes of squares of three dots.
  const [smallest] = COMMON_FORMATS.filter(({ key }) => key === 'a4-65');
  let printed: PrintedPage;
  let page: LabelPage;
  let numbers: string[];
  beforeAll(async () => {
    if (!smallest) throw new Error('no format');
    ({ page, numbers } = fullPage(smallest, 'qr', ADDRESS));
    const [first] = await renderPdf(await labelsPdf([page]), 203);
    if (!first) throw new Error('no page');
    printed = first;
  });
  const readAfter = async (wear: (image: GreyImage) => GreyImage) =>
    smallest && (await numbersOn(smallest, page, wear(printed), 203));

  test('black and white without greys, as a thermal head burns it, is read back', async () => {
    expect(
      await readAfter(({ grey, ...size }) => ({ ...size, grey: grey.map((dot) => (dot < 128 ? 0 : 255)) })),
    ).toEqual(numbers);
  });

  test('ink that runs by a dot is read back', async () => {
    expect(await readAfter(blurred)).toEqual(numbers);
  });

  test('grey paper with grains is read back', async () => {
    expect(await readAfter(grainy)).toEqual(numbers);
  });
});

test('the words of a label are in the PDF as text, whatever their letters', async () => {
  const format = COMMON_FORMATS.find(({ key }) => key === 'roll-100x50');
  if (!format) throw new Error('no format');
  const text = labelOfPacket({
    accessionName: 'Łódź Äpfelgrün ß Señorita é',
    cropName: 'Капуста',
    treatment: 'thiram',
  });
  const laid = layoutPage(format, [{ text, code: encodeCode('qr', 'P-00012') }], NO_SHIFT);
  if (!laid.ok) throw new Error(laid.problem.reason);
  const [printed] = await renderPdf(await labelsPdf([laid.page]), 72);
  const shown = printed?.text.replace(/\s+/g, ' ') ?? '';
  for (const words of [
    'Łódź Äpfelgrün ß Señorita é',
    'P-00012 · L-2024-007',
    'TREATED SEED: DO NOT EAT',
    'Капуста',
    'harvest 2024',
    'germ. 92 % of 200, 2025-03-14',
    'Seed room › Freezer A › Box 7',
    'active stock',
  ]) {
    expect(shown).toContain(words);
  }
});

test('a page of the PDF is as large as the sheet or the roll’s label', async () => {
  for (const format of COMMON_FORMATS) {
    const { page } = fullPage(format, 'qr', null);
    const [printed] = await renderPdf(await labelsPdf([page]), 254);
    // Ten dots a millimetre; the page is rounded down to whole points.
    expect(Math.abs((printed?.width ?? 0) - format.pageWidthMm * 10), format.name).toBeLessThanOrEqual(4);
    expect(Math.abs((printed?.height ?? 0) - format.pageHeightMm * 10), format.name).toBeLessThanOrEqual(4);
  }
});

/** Each dot becomes the mean of itself and its neighbours. */
function blurred({ width, height, grey }: GreyImage): GreyImage {
  const soft = new Uint8Array(grey.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let dy = -1; dy <= 1; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          const at = Math.min(height - 1, Math.max(0, y + dy)) * width + Math.min(width - 1, Math.max(0, x + dx));
          sum += grey[at] ?? 255;
        }
      }
      soft[y * width + x] = Math.round(sum / 9);
    }
  }
  return { width, height, grey: soft };
}

/** Less contrast (60 to 210 of 255), and every dot up to 30 lighter or darker; the same grains each time. */
function grainy({ width, height, grey }: GreyImage): GreyImage {
  let state = 1;
  const grains = grey.map((dot) => {
    state = (state * 1_103_515_245 + 12_345) % 2_147_483_648;
    return 60 + (dot * 150) / 255 + (state / 2_147_483_648 - 0.5) * 60;
  });
  return { width, height, grey: grains };
}
