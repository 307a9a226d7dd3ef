import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import { formatTemperature } from '@/app/_format/figures';
import type { StorageExperimentFit } from '@/lib/domain/longevity/storage-experiment/experiment-fit';
import type { StorageRow } from '@/lib/domain/longevity/storage-experiment/storage-row';
import { sigmaDays } from '@/lib/domain/longevity/viability-equation';
import { normalCdf } from '@/lib/domain/statistics/normal-distribution';

/** The figures behind the pictures: every count, and what the constants of all expect of it. */
export function AllCounts({ rows, fit }: { rows: readonly StorageRow[]; fit: StorageExperimentFit | null }) {
  return (
    <details className="sheet">
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">All {rows.length} counts</summary>
      <ScrollBox label="All counts">
        <table className="ledger tight">
          <TableHead
            columns={['lot', 'moisture', 'temperature', 'days', 'sown', 'germinated', ...(fit ? ['expected'] : [])]}
            words={['lot']}
          />
          <tbody>
            {rows.map((row, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: counts have no other name than their place
              <tr key={index}>
                <td>{row.lot}</td>
                <td className="number">{row.moisturePercent === null ? '' : `${row.moisturePercent} %`}</td>
                <td className="number">{row.temperatureC === null ? '' : formatTemperature(row.temperatureC)}</td>
                <td className="number">{row.days}</td>
                <td className="number">{row.sown}</td>
                <td className="number">{row.germinated}</td>
                {fit && <td className="number">{expected(row, fit)}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </details>
  );
}

function expected({ lot, moisturePercent, temperatureC, days, sown }: StorageRow, fit: StorageExperimentFit): string {
  const K = fit.lots.find((one) => one.lot === lot)?.initialProbits ?? Number.NaN;
  const lost =
    moisturePercent === null || temperatureC === null
      ? 0
      : days / sigmaDays(fit.constants, { moisturePercent, temperatureC });
  return (sown * normalCdf(K - lost)).toFixed(1);
}
