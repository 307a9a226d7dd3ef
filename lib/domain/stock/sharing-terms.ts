/** Whether seed of an accession may be given away: the bank's word, or the donor's. */
export const SHARING_TERMS = [
  { key: 'may', label: 'may be shared' },
  // Such as: not for sale, some seed to come back, the donor's name to be kept with it.
  { key: 'with-terms', label: 'may be shared on terms' },
  { key: 'not', label: 'may not be shared' },
] as const;

export type SharingTermsKey = (typeof SHARING_TERMS)[number]['key'];

/** The keys alone, for input rules and the database. */
export const SHARING_TERMS_KEYS = SHARING_TERMS.map((terms) => terms.key) as [SharingTermsKey, ...SharingTermsKey[]];

/**
 * @param key  'may', 'with-terms' or 'not'
 * @returns its label, or the key itself where it is not in the list
 * Checked in tests/domain/stock/sharing-hindrance.test.ts
 */
export function sharingLabel(key: string): string {
  return SHARING_TERMS.find((terms) => terms.key === key)?.label ?? key;
}
