import 'server-only';

/**
 * How far running imports are. Kept in memory: rows of an import are in one transaction, so nothing of it can be read
 * from the database before it is whole.
 */
export interface ImportProgress {
  phase: 'checking' | 'writing' | 'judging';
  done: number;
  total: number;
}

const holder = globalThis as typeof globalThis & { hilumImports?: Map<string, ImportProgress> };

function running(): Map<string, ImportProgress> {
  holder.hilumImports ??= new Map();
  return holder.hilumImports;
}

export const reportProgress = (importId: string, progress: ImportProgress) => void running().set(importId, progress);
export const endProgress = (importId: string) => void running().delete(importId);
export const progressOf = (importId: string): ImportProgress | null => running().get(importId) ?? null;
