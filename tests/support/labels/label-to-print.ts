import { bagLabel, type LabelledBag } from '@/lib/domain/labels/bag-label';
import type { CodeMatrix } from '@/lib/domain/labels/code-size';
import { type LabelledPacket, packetLabel } from '@/lib/domain/labels/packet-label';
import { type LabelledDish, trayLabel } from '@/lib/domain/labels/tray-label';

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

/** The label of an ordinary dish of a test; a test says what it is about. */
export function labelOfDish(changes: Partial<LabelledDish> = {}, bankAddress: string | null = null) {
  const dish: LabelledDish = {
    trayNumber: 'T-0204',
    dish: 2,
    dishes: 4,
    seeds: 50,
    lotNumber: 'L-2024-007',
    accessionName: 'Westness Black Kale',
    cropName: 'kale',
    setOn: '2026-11-18',
    firstCountOn: '2026-11-23',
    finalCountOn: '2026-12-02',
    temperatures: '20-30',
    place: 'incubator 1, shelf 2',
    treatment: null,
    ...changes,
  };
  return trayLabel(dish, bankAddress);
}

/** Everything that can stand on a dish, and the longest of it. */
export const FULLEST_DISH: Partial<LabelledDish> = {
  trayNumber: 'T-12345',
  dish: 12,
  dishes: 16,
  lotNumber: 'L-2024-0123',
  accessionName:
    'Łódź Äpfelgrün ß, née Señorita, a name so long that it has to be broken over lines and cut in the end',
  cropName: 'Капуста чорна, листова, висока, озима',
  place: 'the walk-in room behind the kitchen, left incubator, third shelf from above',
  treatment: 'thiram and metalaxyl, coloured red',
};

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
