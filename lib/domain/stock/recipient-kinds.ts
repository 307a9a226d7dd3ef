/** Who asks for seed. The one list: input rules and the screens use it. */
export const RECIPIENT_KINDS = [
  { key: 'person', label: 'person' },
  { key: 'group', label: 'group, club or school' },
  { key: 'farm', label: 'farm or market garden' },
  { key: 'bank', label: 'partner bank' },
  { key: 'research', label: 'research or breeding' },
  { key: 'other', label: 'somebody else' },
] as const;

export type RecipientKind = (typeof RECIPIENT_KINDS)[number]['key'];

/** The keys alone, for input rules and the database. */
export const RECIPIENT_KIND_KEYS = RECIPIENT_KINDS.map((kind) => kind.key) as [RecipientKind, ...RecipientKind[]];

/**
 * @param key  a kind's key
 * @returns its label, or the key itself where it is not in the list
 * Checked in tests/domain/stock/sharing-hindrance.test.ts
 */
export function recipientKindLabel(key: string): string {
  return RECIPIENT_KINDS.find((kind) => kind.key === key)?.label ?? key;
}
