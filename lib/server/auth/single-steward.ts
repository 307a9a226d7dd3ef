import type { Person } from './roles';

/** The one person of a bank that only its own computer can reach. */
export const SINGLE_STEWARD: Person = { id: 'single-steward', name: 'Steward', role: 'steward' };
