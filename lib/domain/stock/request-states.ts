/** Where a request for seed stands. 'sent' and 'turned-down' are final: what came after is a request of its own. */
export const REQUEST_STATES = [
  { key: 'open', label: 'open' },
  { key: 'sent', label: 'sent' },
  { key: 'turned-down', label: 'turned down' },
] as const;

export type RequestState = (typeof REQUEST_STATES)[number]['key'];
