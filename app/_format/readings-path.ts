import { storePath } from './store-path';

/** Addresses of a store's readings and of one import among them. */
export const readingsPath = (storeId: string) => `${storePath(storeId)}/readings`;

export const readingImportPath = (storeId: string, importId: number) => `${readingsPath(storeId)}/${importId}`;
