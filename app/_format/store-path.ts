/** Address of a store. */
export const storePath = (id: string) => `/stores/${encodeURIComponent(id)}`;
