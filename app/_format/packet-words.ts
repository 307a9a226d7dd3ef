/** A packet in words: where it lies, in what, how its container is. */
import { CONTAINERS, isHermetic } from '@/lib/domain/stock/containers';
import { findDesiccant } from '@/lib/domain/stock/desiccants';
import type { CareDue, PacketCareNow } from '@/lib/domain/stock/packet-care';
import { formatDate, formatGrams } from './figures';

export const containerLabel = (key: string): string => CONTAINERS.find((one) => one.key === key)?.label ?? key;

/** 'Freezer A › Shelf 2 › Box 7' */
export const pathInWords = (path: { steps: { name: string }[] } | null): string =>
  path ? path.steps.map(({ name }) => name).join(' › ') : 'nobody wrote down where';

/** 'sealed since 2 Mar 2024'; null where nobody wrote it down, 'lets air in' where there is nothing to seal. */
export function sealInWords(container: string, { sealedSince, openSince }: PacketCareNow): string | null {
  if (!isHermetic(container)) return 'lets air in';
  if (openSince) return `open since ${formatDate(openSince)}`;
  return sealedSince && `sealed since ${formatDate(sealedSince)}`;
}

/** 'silica gel without indicator, 5 g, since 2 Mar 2026' */
export function desiccantInWords({ desiccant }: PacketCareNow): string | null {
  if (!desiccant) return null;
  const { key, grams, since } = desiccant;
  return [findDesiccant(key)?.label ?? key, grams === null ? null : formatGrams(grams), `since ${formatDate(since)}`]
    .filter(Boolean)
    .join(', ');
}

/** What the container wants: 'seal it: open since 3 Nov 2026', 'change the desiccant by 2 Mar 2027'. */
export function careDueInWords(due: CareDue | null): string | null {
  if (!due) return null;
  return due.what === 'seal'
    ? `seal it: open since ${formatDate(due.on)}`
    : `change the desiccant by ${formatDate(due.on)}`;
}

/** A line of what was done: 'sealed', 'silica gel without indicator put in, 5 g, to be changed by 2 Mar 2027'. */
export function careDoneInWords(line: {
  what: string;
  desiccant: string | null;
  desiccantGrams: number | null;
  changeDueOn: string | null;
}): string {
  if (line.what !== 'desiccant') return line.what;
  if (!line.desiccant) return 'desiccant taken out';
  return [
    `${findDesiccant(line.desiccant)?.label ?? line.desiccant} put in`,
    line.desiccantGrams === null ? null : formatGrams(line.desiccantGrams),
    line.changeDueOn && `to be changed by ${formatDate(line.changeDueOn)}`,
  ]
    .filter(Boolean)
    .join(', ');
}
