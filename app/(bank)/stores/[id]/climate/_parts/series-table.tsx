import Link from 'next/link';
import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import { type ClimateAddress, climatePath } from '@/app/_format/climate-path';
import { formatDate } from '@/app/_format/figures';
import { SECONDS_PER_DAY } from '@/lib/domain/longevity/store-day';
import type { StoreClimatePage } from '@/lib/server/queries/store-climate';

interface Props {
  storeId: string;
  page: StoreClimatePage;
  address: ClimateAddress;
  isAsked: boolean;
}

/** The picture's figures as a table. Up to 800 rows of it are sent only to whoever asks. */
export function SeriesTable({ storeId, page, address, isAsked }: Props) {
  if (page.spans.length === 0) return null;
  const { from, to } = page;
  if (!isAsked) {
    return (
      <p>
        <Link href={climatePath(storeId, { ...address, from, to, table: 'yes' })} scroll={false} prefetch={false}>
          Show the same figures in a table
        </Link>
      </p>
    );
  }
  const hasHumidity = page.spans.some(({ meanHumidity }) => meanHumidity !== null);
  const columns = [
    'from (UTC)',
    'readings',
    'lowest °C',
    'mean °C',
    'highest °C',
    ...(hasHumidity ? ['lowest %', 'mean %', 'highest %'] : []),
  ];
  return (
    <details open>
      <summary className="cursor-pointer py-2 font-semibold">The same figures in a table</summary>
      <ScrollBox label="What was logged" className="max-h-96 overflow-y-auto">
        <table className="ledger">
          <caption className="sr-only">What was logged; where a row is missing, nothing was</caption>
          <TableHead columns={columns} words={['from (UTC)']} />
          <tbody>
            {page.spans.map((span) => (
              <tr key={span.fromEpochSeconds}>
                <td className="py-1! whitespace-nowrap">{timeOf(span.fromEpochSeconds, page.spanSeconds)}</td>
                {[
                  String(span.readings),
                  figure(span.lowestTemperatureC),
                  figure(span.meanTemperatureC),
                  figure(span.highestTemperatureC),
                  ...(hasHumidity
                    ? [span.lowestHumidity, span.meanHumidity, span.highestHumidity].map((share) =>
                        share === null ? '–' : figure(100 * share),
                      )
                    : []),
                ].map((text, column) => (
                  <td key={columns[column + 1]} className="number py-1!">
                    {text}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </details>
  );
}

const figure = (value: number) => value.toFixed(1).replace('-', '−');

function timeOf(epochSeconds: number, spanSeconds: number): string {
  const iso = new Date(epochSeconds * 1000).toISOString();
  const date = formatDate(iso.slice(0, 10));
  return spanSeconds < SECONDS_PER_DAY ? `${date}, ${iso.slice(11, 16)}` : date;
}
