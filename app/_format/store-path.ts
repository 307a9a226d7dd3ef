/** Address of a store. */
export const storePath = (id: string) => `/stores/${encodeURIComponent(id)}`;

export const packetPath = (number: string) => `/stores/packets/${encodeURIComponent(number)}`;
