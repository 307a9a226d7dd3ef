import { ROLES, type Role } from '../../domain/people/roles';

export { ROLES, type Role };

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
