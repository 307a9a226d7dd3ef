/** What people may do here. A steward may do all that a volunteer may, a volunteer all that a visitor may. */
export const ROLES = ['visitor', 'volunteer', 'steward'] as const;
export type Role = (typeof ROLES)[number];

/** The acting person: every command takes one. */
export interface Person {
  id: string;
  name: string;
  role: Role;
}

export const isRole = (value: unknown): value is Role => ROLES.includes(value as Role);

export function mayActAs(person: Person, needed: Role): boolean {
  return ROLES.indexOf(person.role) >= ROLES.indexOf(needed);
}
