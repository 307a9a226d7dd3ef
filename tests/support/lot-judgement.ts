import { reader } from '@/lib/server/database/connections';

/** The most likely viability that is stored of a lot, 0-1. */
export async function medianOf(lotNumber: string): Promise<number> {
  const judgement = await reader().lotJudgement.findFirstOrThrow({
    where: { lotNumber: { equals: lotNumber } },
    select: { viabilityMedian: true },
  });
  return judgement.viabilityMedian ?? Number.NaN;
}
