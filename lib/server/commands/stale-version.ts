import type { Prisma } from '@/generated/prisma/client';
import { AppError } from '../app-error';
import { describeChanges, type Fields } from './describe-changes';

/**
 * Two people saving at once. The second one is refused, told what the first one changed, and handed the current
 * version: when they send the form again they have seen it, and their save counts.
 */
export class StaleVersion<Version extends number | string = number> extends AppError {
  readonly currentVersion: Version;

  constructor(message: string, currentVersion: Version) {
    super('conflict', message);
    this.currentVersion = currentVersion;
  }
}

interface SavedState extends Fields {
  version: number;
}

/**
 * Refuses a save that was made on an older version of the record.
 *
 * @param record   entity and id as in the audit, and how to call it: 'Accession A-0012'
 * @param formVersion, currentVersion  what the form was opened on, and what is stored
 * @param labels   the record's fields in the users' words
 * @throws StaleVersion naming who changed what since
 */
export async function refuseStale(
  tx: Prisma.TransactionClient,
  record: { entity: string; entityId: string; called: string },
  formVersion: number,
  currentVersion: number,
  labels: Record<string, string>,
): Promise<void> {
  if (formVersion === currentVersion) return;
  const entries = await tx.auditEntry.findMany({
    where: { entity: record.entity, entityId: record.entityId, after: { not: null }, before: { not: null } },
    orderBy: { id: 'desc' },
    take: 20,
    select: { byName: true, before: true, after: true },
  });
  const since = entries
    .map((entry) => ({ by: entry.byName, before: readState(entry.before), after: readState(entry.after) }))
    .filter((entry) => (entry.after?.version ?? 0) > formVersion)
    .reverse();
  const sentences = since.flatMap(({ by, before, after }) => {
    const changes = before && after ? describeChanges(before, after, labels) : '';
    return changes ? [`${by} changed ${changes}.`] : [];
  });
  throw new StaleVersion(
    [
      `${record.called} was changed while you were writing, so yours is not saved yet.`,
      ...sentences,
      'What you typed is still here: look it over and save again to put it in place of theirs.',
    ].join(' '),
    currentVersion,
  );
}

function readState(json: string | null): SavedState | null {
  return json === null ? null : (JSON.parse(json) as SavedState);
}
