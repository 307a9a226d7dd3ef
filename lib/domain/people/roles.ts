/** What people may be here. A steward may do all that a volunteer may, a volunteer all that a visitor may. */
export const ROLES = ['visitor', 'volunteer', 'steward'] as const;
export type Role = (typeof ROLES)[number];

/** What each role may do, in one line. */
export const ROLE_MEANS: Record<Role, string> = {
  visitor: 'reads everything, changes nothing',
  volunteer: 'also records the daily work: lots, tests, seed in and out',
  steward: 'also decides, imports, and looks after people and settings',
};
