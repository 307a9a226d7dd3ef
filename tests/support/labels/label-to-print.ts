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

/** Squares of a chequered board: as large as a code of that size, though it says nothing. */
export function anyCode(kind: CodeMatrix['kind'], squares: number): CodeMatrix {
  return {
    kind,
    rows: Array.from({ length: squares }, (_, y) => Array.from({ length: squares }, (_, x) => (x + y) % 2 === 0)),
  };
}
