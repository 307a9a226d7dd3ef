import type { Person } from '@/lib/server/auth/roles';

/** Acting people for tests. */
export const STEWARD: Person = { id: 'test-steward', name: 'Test steward', role: 'steward' };
export const VOLUNTEER: Person = { id: 'test-volunteer', name: 'Test volunteer', role: 'volunteer' };
export const VISITOR: Person = { id: 'test-visitor', name: 'Test visitor', role: 'visitor' };
