/** Address of a request for seed. */
export const requestPath = (number: string) => `/stores/sharing/${encodeURIComponent(number)}`;

/** Where the labels of its bags are made. */
export const bagLabelsPath = (number: string) => `/stores/labels?request=${encodeURIComponent(number)}`;
