import type { Person } from '../lib/server/auth/roles';

/** Who wrote the demo, as the log of changes shows it. */
export const DEMO_PERSON: Person = { id: 'demo', name: 'Demo', role: 'steward' };
