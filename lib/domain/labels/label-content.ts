import { PACKET_ROLES, type PacketRole } from '../stock/packet-roles';
import { printableText } from './measure-text';

/** What is known of a packet that stands on its label. */
export interface LabelContent {
  packetNumber: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  /** 'YYYY-MM-DD' */
  harvestedOn: string;
  /** where it lies, outermost first: 'Freezer A › Shelf 2 › Box 7'; null when it lies nowhere */
  place: string | null;
  germination: LabelledGermination | null;
  /** seed treatment (fungicide and the like), null for untreated seed */
  treatment: string | null;
  role: PacketRole;
}

export interface LabelledGermination {
  /** normal seedlings */
  germinated: number;
  sown: number;
  /** 'YYYY-MM-DD': the day the test ended */
  testedOn: string;
}

/** What a line is about. The first four are never left out; the others give way from the last to the first. */
export const LABEL_PARTS = [
  'name',
  'packet number',
  'lot number',
  'caution',
  'harvest',
  'germination',
  'place',
  'crop',
  'treatment',
  'role',
] as const;

export type LabelPart = (typeof LABEL_PARTS)[number];

/** Parts without which a label is not printed. */
export const NEEDED_PARTS: readonly LabelPart[] = ['name', 'packet number', 'lot number', 'caution'];

export interface LabelLine {
  part: LabelPart;
  text: string;
}

/**
 * The words of a label, from top to bottom.
 *
 * @returns lines with printable letters only, and the letters that no label font has
 * Checked in tests/domain/labels/label-content.test.ts
 */
export function labelLines(content: LabelContent): { lines: LabelLine[]; missing: string[] } {
  const { germination, treatment, place } = content;
  const wanted: [LabelPart, string | null][] = [
    ['name', content.accessionName],
    ['packet number', content.packetNumber],
    ['lot number', content.lotNumber],
    ['caution', treatment === null ? null : 'TREATED SEED: DO NOT EAT'],
    ['treatment', treatment],
    ['crop', content.cropName],
    ['harvest', `harvest ${content.harvestedOn.slice(0, 4)}`],
    ['germination', germination && germinationWords(germination)],
    ['place', place],
    ['role', PACKET_ROLES.find((role) => role.key === content.role)?.label ?? null],
  ];
  const missing = new Set<string>();
  const lines = wanted.flatMap(([part, text]): LabelLine[] => {
    if (text === null) return [];
    const printable = printableText(text);
    for (const letter of printable.missing) missing.add(letter);
    return printable.text === '' ? [] : [{ part, text: printable.text }];
  });
  return { lines, missing: [...missing] };
}

function germinationWords({ germinated, sown, testedOn }: LabelledGermination): string {
  return `germ. ${Math.round((100 * germinated) / sown)} % of ${sown}, ${testedOn}`;
}
