import Link from 'next/link';
import { TableHead } from '@/app/_components/table-head';
import { formatDate } from '@/app/_format/figures';
import { dryingPath } from '@/app/_format/links';
import { formatOnBalance } from '@/app/(bank)/reference/_parts/on-balance';
import { localMinute } from '@/lib/server/local-time';
import type { DryingRunDetail } from '@/lib/server/queries/drying-runs';

/** Every weighing that stands, the latest first, with its moisture. */
export function WeighingTable({ run, mayRecord }: { run: DryingRunDetail; mayRecord: boolean }) {
  const { progress, weighings, tareG, stepG } = run;
  const moistureOf = (weightG: number) =>
    progress.ok ? ((100 * (weightG - tareG - progress.dryMatterG)) / (weightG - tareG)).toFixed(1) : '–';
  const columns = ['weighed at', 'with the tray', 'moisture, %', ...(mayRecord ? ['correct'] : [])];
  return (
    <section className="grid gap-3" aria-labelledby="weighings">
      <h2 id="weighings">Weighings</h2>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <TableHead columns={columns} words={['weighed at', 'correct']} />
          <tbody>
            {weighings.toReversed().map(({ id, atEpochSeconds, weightG }) => (
              <tr key={id}>
                <th scope="row" className="row-head">
                  {clock(atEpochSeconds)}
                </th>
                <td className="number" data-label="with the tray">
                  {formatOnBalance(weightG, stepG)}
                </td>
                <td className="number" data-label="moisture, %">
                  {moistureOf(weightG)}
                </td>
                {mayRecord && (
                  <td data-label="">
                    <Link
                      href={`${dryingPath(run.number)}/correct?weighing=${encodeURIComponent(id)}`}
                      className="inline-flex min-h-11 items-center text-ink underline underline-offset-3"
                    >
                      Correct<span className="sr-only"> {clock(atEpochSeconds)}</span>
                    </Link>
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function clock(epochSeconds: number): string {
  const minute = localMinute(epochSeconds);
  return `${formatDate(minute.slice(0, 10))}, ${minute.slice(11)}`;
}
