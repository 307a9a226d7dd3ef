/** Address of a request for seed. */
export const requestPath = (number: string) => `/stores/sharing/${encodeURIComponent(number)}`;

/** Where labels are made for packets: their numbers, one after the other. */
export const labelsPath = (packetNumbers: readonly string[]) =>
  `/stores/labels?packets=${packetNumbers.map(encodeURIComponent).join(',')}`;
