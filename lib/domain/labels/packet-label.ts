import { PACKET_ROLES, type PacketRole } from '../stock/packet-roles';
import { packetCode } from './code-text';
import { germinationWords, harvestWords, type LabelledGermination, type LabelText, labelLines } from './label-text';

/** What is known of a packet that stands on its label. */
export interface LabelledPacket {
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

/**
 * The label of a packet of the bank: what it is and where it lies. Its code opens the packet.
 *
 * @param bankAddress  where phones reach this bank, null when they do not
 * Checked in tests/domain/labels/packet-label.test.ts
 */
export function packetLabel(packet: LabelledPacket, bankAddress: string | null): LabelText {
  const { germination, treatment } = packet;
  return {
    called: packet.packetNumber,
    codeText: packetCode(packet.packetNumber, bankAddress),
    ...labelLines([
      ['name', packet.accessionName],
      ['packet number', packet.packetNumber],
      ['lot number', packet.lotNumber],
      ['caution', treatment === null ? null : 'TREATED SEED: DO NOT EAT'],
      ['treatment', treatment],
      ['crop', packet.cropName],
      ['harvest', harvestWords(packet.harvestedOn)],
      ['germination', germination && germinationWords(germination)],
      ['place', packet.place],
      ['role', PACKET_ROLES.find((role) => role.key === packet.role)?.label ?? null],
    ]),
  };
}
