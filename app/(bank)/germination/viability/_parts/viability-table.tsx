import Link from 'next/link';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath, viabilityTestPath } from '@/app/_format/links';
import { VIABILITY_KIND_LABELS } from '@/lib/domain/germination/dormancy/viability-kinds';
import type { ViabilityTestRow } from '@/lib/server/queries/viability-tests';
import { resultInShort } from './viability-words';

interface Props {
  rows: readonly ViabilityTestRow[];
  /** read before the table by who cannot see it */
  caption: string;
  /** whether each line says which lot it was */
  withLot?: boolean;
}

/** Tetrazolium and cut tests, a line each. */
export function ViabilityTable({ rows, caption, withLot = false }: Props) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <caption className="sr-only">{caption}</caption>
        <thead>
          <tr>
            <th scope="col">test</th>
            {withLot && <th scope="col">lot</th>}
            <th scope="col">kind</th>
            <th scope="col">day</th>
            <th scope="col" className="number">
              seeds
            </th>
            <th scope="col">found</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.number} className={row.correctedByNumber ? 'text-ink-2' : undefined}>
              <th scope="row" className="row-head">
                <Link
                  href={viabilityTestPath(row.number)}
                  className="figures inline-block py-1 text-ink underline underline-offset-3"
                >
                  {row.number}
                </Link>
                {row.correctedByNumber && (
                  <span className="label block font-normal">corrected by {row.correctedByNumber}</span>
                )}
              </th>
              {withLot && (
                <td>
                  <b>{row.accessionName}</b> <span className="quiet">{row.cropName}</span>
                  <Link href={lotPath(row.lotNumber)} className="figures block w-fit text-sm text-ink">
                    {row.lotNumber}
                  </Link>
                </td>
              )}
              <td data-label="kind">
                {VIABILITY_KIND_LABELS[row.kind]}
                {row.trayNumber && <span className="label block">left over in {row.trayNumber}</span>}
              </td>
              <td data-label="day" className="whitespace-nowrap">
                {formatDate(row.testedOn)}
              </td>
              <td className="number" data-label="seeds">
                {formatCount(row.result.seeds)}
              </td>
              <td data-label="found">
                {resultInShort(row.result)}
                {row.trayNumber && <span className="label block">of those left over</span>}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
