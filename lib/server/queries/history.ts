import 'server-only';
import { reader } from '../database/connections';

export interface HistoryLine {
  id: number;
  at: Date;
  byName: string;
  summary: string;
}

/** Lines of the audit about these records, newest first. */
export async function findHistory(about: { entity: string; ids: string[] }[], limit = 30): Promise<HistoryLine[]> {
  return reader().auditEntry.findMany({
    where: { OR: about.map(({ entity, ids }) => ({ entity, entityId: { in: ids } })) },
    orderBy: { id: 'desc' },
    take: limit,
    select: { id: true, at: true, byName: true, summary: true },
  });
}
