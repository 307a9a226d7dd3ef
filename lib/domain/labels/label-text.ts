import { printableText } from './measure-text';

/** What stands on one label, whatever it is stuck on: a packet (packet-label), a bag that goes out, a dish that is tested. */
export interface LabelText {
  /** what the label belongs to, for somebody told that it cannot be printed: 'P-00012' */
  called: string;
  /** from top to bottom, with printable letters only */
  lines: LabelLine[];
  /** letters that no label font has */
  missing: string[];
  /** what its code says */
  codeText: string;
}

export interface LabelLine {
  part: LabelPart;
  text: string;
}

/** What a line is about. The first seven are never left out; the others give way from the last to the first. */
export const LABEL_PARTS = [
  'name',
  'test number',
  'dish',
  'packet number',
  'lot number',
  'caution',
  'terms',
  'counts',
  'treatment',
  'harvest',
  'germination',
  'seeds',
  'temperature',
  'set on',
  'place',
  'crop',
  'role',
  'request',
  'bank',
] as const;

export type LabelPart = (typeof LABEL_PARTS)[number];

/** Parts without which a label is not printed. */
export const NEEDED_PARTS: readonly LabelPart[] = LABEL_PARTS.slice(0, LABEL_PARTS.indexOf('terms') + 1);

export interface LabelledGermination {
  /** normal seedlings */
  germinated: number;
  sown: number;
  /** 'YYYY-MM-DD': the day the test ended */
  testedOn: string;
}

/**
 * Words made printable; what is not known leaves no line.
 *
 * @param wanted  parts from top to bottom with their words, null for what is not known
 * @returns lines with printable letters only, and the letters that no label font has
 * Checked in tests/domain/labels/packet-label.test.ts
 */
export function labelLines(wanted: readonly [LabelPart, string | null][]): Pick<LabelText, 'lines' | 'missing'> {
  const missing = new Set<string>();
  const lines = wanted.flatMap(([part, text]): LabelLine[] => {
    if (text === null) return [];
    const printable = printableText(text);
    for (const letter of printable.missing) missing.add(letter);
    return printable.text === '' ? [] : [{ part, text: printable.text }];
  });
  return { lines, missing: [...missing] };
}

/** The year is what people sow by. */
export const harvestWords = (harvestedOn: string): string => `harvest ${harvestedOn.slice(0, 4)}`;

export const germinationWords = ({ germinated, sown, testedOn }: LabelledGermination): string =>
  `germ. ${Math.round((100 * germinated) / sown)} % of ${sown}, ${testedOn}`;
