import { connections } from '@/lib/server/database/connections';
import type { Attempt } from './acts/act';

/** What every packet should hold, told from what was asked for and granted, not from the ledger. */
export type Balances = Map<string, number>;

export function balancesNow(): Balances {
  return new Map(
    connections()
      .rows.prepare<[], { id: string; seeds: number }>(
        `SELECT p."id", COALESCE((SELECT SUM(m."seeds") FROM "Movement" m WHERE m."packetId" = p."id"), 0) AS "seeds"
         FROM "Packet" p ORDER BY p."rowid"`,
      )
      .all()
      .map(({ id, seeds }) => [id, seeds]),
  );
}

interface Line {
  packetId: string;
  seeds: number;
}

const linesOf = (sql: string, value: unknown) => connections().rows.prepare<[unknown], Line>(sql).all(value);

/** The lines that taking back a line takes back: itself, or both of its pair. */
export const linesTakenBack = (movementId: unknown): Line[] =>
  linesOf(
    `SELECT m."packetId", m."seeds" FROM "Movement" m JOIN "Movement" asked ON asked."id" = ?
     WHERE m."id" = asked."id" OR m."pairId" = asked."pairId"`,
    movementId,
  );

export const linesOfRequest = (requestId: unknown): Line[] =>
  linesOf(`SELECT "packetId", "seeds" FROM "SharingLine" WHERE "requestId" = ?`, requestId);

/** What closing a stock-take takes out: counted packets get what was missing, lost ones lose what was expected. */
export const linesOfStockTake = ({ stockTakeId, decisions }: Record<string, unknown>): Line[] => {
  const decided = new Map(
    Object.entries(decisions as Record<string, { decision?: string }>).map(([lineId, one]) => [lineId, one.decision]),
  );
  return connections()
    .rows.prepare<
      [unknown],
      { id: string; packetId: string; finding: string; expectedSeeds: number; seeds: number | null }
    >(`SELECT "id", "packetId", "finding", "expectedSeeds", "seeds" FROM "StockTakeLine" WHERE "stockTakeId" = ?`)
    .all(stockTakeId)
    .map(({ id, packetId, finding, expectedSeeds, seeds }) => {
      const decision = decided.get(id);
      if (decision === 'leave') return { packetId, seeds: 0 };
      if (finding === 'not-here') return { packetId, seeds: decision === 'loss' ? expectedSeeds : 0 };
      return { packetId, seeds: seeds === null ? 0 : expectedSeeds - seeds };
    });
};

/**
 * @param before   balances before the command
 * @param lines    lines that the command was about, read before it ran
 * @param outcome  what the command answered
 * @returns balances as they should be after it
 */
export function expectedBalances(
  before: Balances,
  { command, input }: Attempt,
  lines: Line[],
  outcome: unknown,
): Balances {
  const after = new Map(before);
  const add = (packetId: unknown, seeds: number) =>
    void after.set(packetId as string, (after.get(packetId as string) ?? 0) + seeds);
  const answer = (outcome ?? {}) as { packetId?: string };
  switch (command.commandName) {
    case 'take-seed-out':
    case 'record-moisture-test':
      add(input.packetId, -Number(input.amount));
      break;
    case 'split-packet':
      add(input.packetId, -Number(input.amount));
      add(answer.packetId, Number(input.amount));
      break;
    case 'merge-packets':
      add(input.packetId, before.get(input.otherPacketId as string) ?? 0);
      after.set(input.otherPacketId as string, 0);
      break;
    case 'log-cleaned-lot':
      add(answer.packetId, Number(input.seedCount));
      break;
    case 'record-germination-test':
      add(input.packetId, -100);
      break;
    case 'record-viability-test':
      if (input.takeSeed) add(input.packetId, -1 - Number(input.stainedNormally ?? input.firm));
      break;
    case 'set-trays':
      for (const { seedFrom, size } of input.trays as { seedFrom: string; size: string }[]) {
        add(seedFrom.replace('packet:', ''), -({ '2x25': 50, '4x100': 400 }[size] ?? 40));
      }
      break;
    case 'set-next-group':
      add(String(input.seedFrom).replace('packet:', ''), -40);
      break;
    case 'undo-movement':
    case 'send-request':
    case 'close-stock-take':
      for (const { packetId, seeds } of lines) add(packetId, -seeds);
      break;
  }
  return after;
}
