import Link from 'next/link';
import { formatCount } from '@/app/_format/figures';
import { testPath } from '@/app/_format/links';
import type { TestSeries } from '@/lib/server/queries/test-series';

/** Tests in groups that were not clear and stand still until somebody sets the next group. */
export function GroupsToSet({ all }: { all: readonly TestSeries[] }) {
  if (all.length === 0) return null;
  return (
    <section className="grid gap-3" aria-labelledby="groups-title">
      <h2 id="groups-title">
        Next groups to set <span className="figures font-normal text-ink-2">{formatCount(all.length)}</span>
      </h2>
      <ul className="sheet p-0!">
        {all.map((series) => (
          <li
            key={series.seriesId}
            className="flex flex-wrap items-baseline justify-between gap-x-6 gap-y-1 border-b border-rule px-4 py-2 last:border-0 sm:px-5"
          >
            <Link
              href={`${testPath(series.groups.at(-1)?.number ?? '')}#series-title`}
              className="inline-flex min-h-11 flex-wrap items-center gap-x-3 text-ink"
            >
              <span className="figures">{series.lot.number}</span>
              <span>
                <b>{series.lot.accessionName}</b> {series.lot.cropName}
              </span>
            </Link>
            <span className="font-semibold text-ochre">{groupToSetInWords(series)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** '34 of 40 alive: not clear yet, set 40 more' */
export const groupToSetInWords = ({ soFar: { alive, seedsTested, nextSeeds } }: TestSeries) =>
  `${alive} of ${seedsTested} alive: not clear yet, set ${nextSeeds} more`;
