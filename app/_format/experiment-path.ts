export const experimentPath = (id: string) => `/reference/storage-experiments/${encodeURIComponent(id)}`;
