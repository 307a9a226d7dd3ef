/** What a store can be. The one list: input rules and the screens use it. A box lies on a shelf, a shelf in a freezer. */
export const STORE_KINDS = [
  { key: 'freezer', label: 'freezer' },
  { key: 'fridge', label: 'fridge' },
  { key: 'room', label: 'room' },
  { key: 'cabinet', label: 'cabinet' },
  { key: 'shelf', label: 'shelf' },
  { key: 'box', label: 'box' },
  // Another bank that keeps seed for this one: what lies there is a safety duplicate, held elsewhere.
  { key: 'partner-bank', label: 'partner bank' },
] as const;

export type StoreKind = (typeof STORE_KINDS)[number]['key'];

/** The keys alone, for input rules and the database. */
export const STORE_KIND_KEYS = STORE_KINDS.map((kind) => kind.key) as [StoreKind, ...StoreKind[]];
