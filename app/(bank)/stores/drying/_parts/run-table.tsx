import Link from 'next/link';
import { TableHead } from '@/app/_components/table-head';
import { formatDate } from '@/app/_format/figures';
import { dryingPath } from '@/app/_format/links';
import { formatMoisture } from '@/app/_format/moisture';
import type { DryingRunRow } from '@/lib/server/queries/drying-runs';
import { HintMark } from './hint-mark';
import { stopHint } from './stop-hint';

interface Props {
  runs: readonly DryingRunRow[];
  caption: string;
  ended?: boolean;
}

/** Drying runs, one a row: what to do with those that run, what was reached by those that ended. */
export function RunTable({ runs, caption, ended = false }: Props) {
  const [now, last] = ended ? ['reached', 'ended'] : ['now', 'what to do'];
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <caption className="sr-only">{caption}</caption>
        <TableHead columns={['run', 'seed', 'since', now, 'wanted', last]} words={['run', 'seed', 'since', last]} />
        <tbody>
          {runs.map((run) => (
            <tr key={run.id}>
              <th scope="row" className="row-head">
                <Link href={dryingPath(run.number)} className="figures text-ink underline underline-offset-3">
                  {run.number}
                </Link>
              </th>
              <td data-label="seed">
                <b>{run.accessionName}</b> <span className="figures">{run.packetNumber ?? run.lotNumber}</span>
                {run.dryingWith && <span className="quiet block">{run.dryingWith}</span>}
              </td>
              <td data-label="since">{formatDate(run.startedOn)}</td>
              <td className="number" data-label={now}>
                {run.progress.ok ? formatMoisture(run.progress.moistureNowPercent) : '–'}
              </td>
              <td className="number" data-label="wanted">
                {formatMoisture(run.targetMoisturePercent)}
              </td>
              <td data-label={last}>{run.endedOn ? formatDate(run.endedOn) : <HintMark hint={stopHint(run)} />}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
