import type { Prisma } from '@/generated/prisma/client';
import type { StockTakeDecision } from '@/lib/domain/stock/stock-take-difference';
import { fieldError } from './field-error';

/** Decisions by the id of their line. */
export type Decisions = Record<string, Decided>;

interface Decided {
  version: number;
  decision?: StockTakeDecision | undefined;
}

/** The name of a box of the review's form. */
export const decisionField = (lineId: string) => `decisions.${lineId}.decision`;

/**
 * Puts decisions on the lines of an open stock-take.
 *
 * @returns how many lines were decided
 * @throws AppError beside each line that was counted anew, or taken out, since it was reviewed
 */
export async function takeOverDecisions(
  tx: Prisma.TransactionClient,
  stockTakeId: string,
  decisions: Decisions,
): Promise<number> {
  const lines = await tx.stockTakeLine.findMany({
    where: { stockTakeId, id: { in: Object.keys(decisions) } },
    select: { id: true, version: true, decision: true },
  });
  const byId = new Map(lines.map((line) => [line.id, line]));
  const refused: Record<string, string> = {};
  let decided = 0;
  for (const [lineId, { version, decision }] of Object.entries(decisions)) {
    const line = byId.get(lineId);
    if (line?.version !== version) {
      refused[decisionField(lineId)] =
        'This packet was looked at again meanwhile: see what was found, and decide anew.';
      continue;
    }
    if (decision) decided += 1;
    // The version is that of what was found: a decision does not change it, so that saving twice is no conflict.
    if (line.decision !== (decision ?? null)) {
      await tx.stockTakeLine.update({ where: { id: lineId }, data: { decision: decision ?? null } });
    }
  }
  if (Object.keys(refused).length > 0) throw fieldError(refused);
  return decided;
}
