import type { Prisma } from '@/generated/prisma/client';

/**
 * The next number of a series, such as 'A-0007', 'L-2026-031', 'T-0204'. Numbers are never given out twice, and one that
 * somebody typed by hand is skipped.
 *
 * @param series  what stands before the running number: 'A', 'L-2026', 'P', 'T'
 * @param digits  least digits of the running number
 * @param isTaken whether a number is in use already
 */
export async function nextNumber(
  tx: Prisma.TransactionClient,
  series: string,
  digits: number,
  isTaken: (number: string) => Promise<boolean>,
): Promise<string> {
  const row = await tx.numberSeries.upsert({
    where: { series },
    create: { series, last: 1 },
    update: { last: { increment: 1 } },
  });
  let last = row.last;
  let number = format(series, last, digits);
  while (await isTaken(number)) {
    last += 1;
    number = format(series, last, digits);
  }
  if (last !== row.last) await tx.numberSeries.update({ where: { series }, data: { last } });
  return number;
}

const format = (series: string, running: number, digits: number) =>
  `${series}-${String(running).padStart(digits, '0')}`;
