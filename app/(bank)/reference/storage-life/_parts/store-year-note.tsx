import Link from 'next/link';
import { Notice } from '@/app/_components/notice';
import { formatTemperature } from '@/app/_format/figures';
import { DAYS_LOOKED_AT, type StoreYear } from '@/lib/server/queries/store-year';

/** What the marked store was really like: its target is what is meant, its readings are what was. */
export function StoreYearNote({ name, year, askHref }: { name: string; year: StoreYear; askHref: string }) {
  const temperature = formatTemperature(year.temperatureC);
  return (
    <Notice kind="note">
      By its readings of the last year {name} aged sealed seed like a steady <b>{temperature}</b>: warm days count for
      more than cool ones save. {year.daysRead} of {DAYS_LOOKED_AT} days were logged
      {year.daysRead < DAYS_LOOKED_AT && '; its target stands in for the others'}.{' '}
      <Link href={askHref}>Ask about {temperature}</Link>
    </Notice>
  );
}
