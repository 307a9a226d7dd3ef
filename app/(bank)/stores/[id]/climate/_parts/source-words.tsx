import Link from 'next/link';
import { targetInWords } from '@/app/_format/climate';
import { climatePath } from '@/app/_format/climate-path';
import { formatDateRange } from '@/app/_format/date-range';
import { formatCount } from '@/app/_format/figures';
import { fromEpochDay } from '@/lib/domain/calendar/calendar-date';
import type { ClimatePart } from '@/lib/server/queries/climate-parts';
import type { StoreClimatePage } from '@/lib/server/queries/store-climate';

/** How much of these days was measured, by which logger, and what the store was meant to be. */
export function SourceWords({ storeId, page }: { storeId: string; page: StoreClimatePage }) {
  const read = Math.round(page.daysRead);
  const missing = page.days - read;
  return (
    <div className="grid max-w-prose gap-1">
      <p>
        {read === 0 ? (
          <b>Nothing was logged on these days: the target stands in, it was not measured.</b>
        ) : (
          <>
            Logged on {formatCount(read)} of {formatCount(page.days)} {page.days === 1 ? 'day' : 'days'}
            {missing > 0 && '. Hatched: not logged; the target stands in there, it was not measured'}.
          </>
        )}
      </p>
      <ul>
        {page.parts.map((part) => (
          <li key={part.fromDay}>
            {page.parts.length > 1 && (
              <b>{formatDateRange(fromEpochDay(part.fromDay), fromEpochDay(part.toDay - 1))}: </b>
            )}
            {partWords(part, storeId, page)}
          </li>
        ))}
      </ul>
    </div>
  );
}

function partWords({ loggedIn, target, targetOf }: ClimatePart, storeId: string, page: StoreClimatePage) {
  const meant = targetInWords({
    targetTemperatureC: target.temperatureC,
    targetRelativeHumidity: target.relativeHumidity,
  });
  const { from, to } = page;
  return (
    <>
      Meant to be {meant}
      {targetOf.id !== storeId && (
        <>
          , as <Link href={climatePath(targetOf.id, { from, to })}>{targetOf.name}</Link>
        </>
      )}
      ;{' '}
      {loggedIn === null ? 'no logger' : loggedIn.id === storeId ? 'its own logger' : 'no logger of its own, that in '}
      {loggedIn !== null && loggedIn.id !== storeId && (
        <>
          <Link href={climatePath(loggedIn.id, { from, to })}>{loggedIn.name}</Link> counts
        </>
      )}
      .
    </>
  );
}
