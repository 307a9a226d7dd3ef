import 'server-only';
import { balanceUncertainty } from '@/lib/domain/stock/balance-uncertainty';
import {
  choicesFor,
  differenceOf,
  type StockTakeDecision,
  weighDifference,
} from '@/lib/domain/stock/stock-take-difference';
import { reader } from '../database/connections';
import type { StockTakeLine } from './stock-take-work';

/** A line about which something is to be decided. */
export interface ReviewLine extends StockTakeLine {
  choices: StockTakeDecision[];
  /** null when it was only ticked */
  difference: number | null;
  /** what the ledger said when it was looked at, with its band */
  expected: { seeds: number; lower: number; upper: number };
  /** larger than what is unsure of balance and count explains; null where there is nothing to hold against each other */
  unexplained: boolean | null;
  /** seeds that went out (positive) or came in since it was looked at */
  goneSince: number;
}

/** Lines with something to decide, the largest differences first: three statements. */
export async function reviewLines(lines: StockTakeLine[]): Promise<ReviewLine[]> {
  const open = lines.flatMap((line) => {
    const choices = choicesFor({ ...line, seeds: line.foundSeeds });
    return choices.length > 0 ? [{ line, choices }] : [];
  });
  const packetIds = open.map(({ line }) => line.packetId);
  const [movements, weighed] = await Promise.all([
    reader().movement.findMany({
      where: { packetId: { in: packetIds } },
      orderBy: { id: 'asc' },
      select: {
        id: true,
        packetId: true,
        reason: true,
        seeds: true,
        grams: true,
        seedsSd: true,
        correctsId: true,
        recordedAt: true,
      },
    }),
    reader().packet.findMany({
      where: { id: { in: packetIds }, lot: { thousandSeedWeightG: { not: null } } },
      select: { id: true },
    }),
  ]);
  const withSeedWeight = new Set(weighed.map(({ id }) => id));
  const ledgers = new Map<string, typeof movements>();
  for (const movement of movements) {
    const ledger = ledgers.get(movement.packetId);
    if (ledger) ledger.push(movement);
    else ledgers.set(movement.packetId, [movement]);
  }
  return open
    .map(({ line, choices }): ReviewLine => {
      const options = { lotHasSeedWeight: withSeedWeight.has(line.packetId) };
      const then = (ledgers.get(line.packetId) ?? []).filter(({ recordedAt }) => recordedAt <= line.at);
      const { seeds, lower, upper } = balanceUncertainty(then, options);
      const found = line.foundSeeds;
      const counted = found === null ? null : { seeds: found, grams: line.grams, seedsSd: line.foundSd };
      const difference = differenceOf({ ...line, seeds: found });
      return {
        ...line,
        choices,
        difference,
        expected: { seeds, lower, upper },
        unexplained: counted && difference ? weighDifference(then, counted, options).unexplained : null,
        goneSince: line.expectedSeeds - line.seeds,
      };
    })
    .sort((a, b) => Math.abs(b.difference ?? 0) - Math.abs(a.difference ?? 0));
}
