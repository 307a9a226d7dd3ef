/** What a packet is kept for. A safety duplicate lies elsewhere, best at another bank, and is not drawn from. */
export const PACKET_ROLES = [
  { key: 'active', label: 'active stock' },
  { key: 'base', label: 'base stock' },
  { key: 'safety-duplicate', label: 'safety duplicate' },
] as const;

export type PacketRole = (typeof PACKET_ROLES)[number]['key'];

/** The keys alone, for input rules and the database. */
export const PACKET_ROLE_KEYS = PACKET_ROLES.map((role) => role.key) as [PacketRole, ...PacketRole[]];
