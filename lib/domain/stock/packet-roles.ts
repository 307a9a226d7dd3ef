/** What a packet is kept for. A safety duplicate lies elsewhere, best at another bank, and is not drawn from. */
export const PACKET_ROLES = [
  { key: 'active', label: 'active stock', does: 'is drawn from for tests, sowing and sharing' },
  { key: 'base', label: 'base stock', does: 'is kept for the long run, cold and sealed, and drawn from to regrow' },
  { key: 'safety-duplicate', label: 'safety duplicate', does: 'lies elsewhere in case all this is lost' },
] as const;

export type PacketRole = (typeof PACKET_ROLES)[number]['key'];

/** The keys alone, for input rules and the database. */
export const PACKET_ROLE_KEYS = PACKET_ROLES.map((role) => role.key) as [PacketRole, ...PacketRole[]];

/**
 * @param key  a role's key
 * @returns its label, or the key itself where it is not in the list
 * Checked in tests/domain/stock/packet-roles.test.ts
 */
export function packetRoleLabel(key: string): string {
  return PACKET_ROLES.find((role) => role.key === key)?.label ?? key;
}
