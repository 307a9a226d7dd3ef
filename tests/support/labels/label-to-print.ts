import { bagLabel, type LabelledBag } from '@/lib/domain/labels/bag-label';
import type { CodeMatrix } from '@/lib/domain/labels/code-size';
import { type LabelledPacket, packetLabel } from '@/lib/domain/labels/packet-label';

/** The label of an ordinary packet; a test says what it is about. */
export function labelOfPacket(changes: Partial<LabelledPacket> = {}, bankAddress: string | null = null) {
  const packet: LabelledPacket = {
    packetNumber: 'P-00012',
    lotNumber: 'L-2024-007',
    accessionName: 'Westness Black Kale',
    cropName: 'kale',
    harvestedOn: '2024-09-12',
    place: 'Seed room › Freezer A › Box 7',
    germination: { germinated: 184, sown: 200, testedOn: '2025-03-14' },
    treatment: null,
    role: 'active',
    ...changes,
  };
  return packetLabel(packet, bankAddress);
}

/** The label of an ordinary bag that goes out; a test says what it is about. */
export function labelOfBag(changes: Partial<LabelledBag> = {}, bankAddress: string | null = null) {
  const bag: LabelledBag = {
    requestNumber: 'R-0001',
    bankName: 'Brannasay Seed Bank',
    lotNumber: 'L-2024-007',
    accessionName: 'Westness Black Kale',
    cropName: 'kale',
    harvestedOn: '2024-09-12',
    seeds: 120,
    grams: 0.42,
    germination: { germinated: 184, sown: 200, testedOn: '2025-03-14' },
    treatment: null,
    onTerms: false,
    ...changes,
  };
  return bagLabel(bag, bankAddress);
}

/** Everything that can stand on a bag, and the longest of it. */
export const FULLEST_BAG: Partial<LabelledBag> = {
  lotNumber: 'L-2024-0123',
  accessionName:
    'Łódź Äpfelgrün ß, née Señorita, a name so long that it has to be broken over lines and cut in the end',
  cropName: 'Капуста чорна, листова, висока, озима',
  bankName: 'The Seed Bank of the Gardeners and Crofters of Brannasay and the Out Skerries',
  seeds: 12_500,
  grams: 1250,
  treatment: 'thiram and metalaxyl, coloured red',
  onTerms: true,
};

/** Squares of a chequered board: as large as a code of that size, though it says nothing. */
export function anyCode(kind: CodeMatrix['kind'], squares: number): CodeMatrix {
  return {
    kind,
    rows: Array.from({ length: squares }, (_, y) => Array.from({ length: squares }, (_, x) => (x + y) % 2 === 0)),
  };
}
