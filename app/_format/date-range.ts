import { formatDate } from './figures';

/** '3–9 Jul 2026', '28 Jun–9 Jul 2026', '28 Dec 2025–3 Jan 2026'; one day alone as '3 Jul 2026'. */
export function formatDateRange(from: string, to: string): string {
  if (from === to) return formatDate(from);
  const [day, month, year] = formatDate(from).split(' ');
  if (from.slice(0, 7) === to.slice(0, 7)) return `${day}–${formatDate(to)}`;
  if (from.slice(0, 4) === to.slice(0, 4)) return `${day} ${month}–${formatDate(to)}`;
  return `${day} ${month} ${year}–${formatDate(to)}`;
}
