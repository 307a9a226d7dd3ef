import Link from 'next/link';
import { formatCount, formatInstant } from '@/app/_format/figures';
import { readingImportPath } from '@/app/_format/readings-path';
import type { ReadingImportRow } from '@/lib/server/queries/reading-imports';

const STATUS_WORDS: Record<string, string> = {
  uploaded: 'not imported yet',
  imported: 'imported',
  'taken-back': 'taken back',
};

/** Files and scripts that brought readings, latest first. */
export function ImportList({ storeId, imports }: { storeId: string; imports: readonly ReadingImportRow[] }) {
  return (
    <div className="sheet overflow-x-auto p-0!">
      <table className="ledger stacked">
        <thead>
          <tr>
            <th scope="col">from</th>
            <th scope="col">when</th>
            <th scope="col">what became of it</th>
            <th scope="col" className="number">
              readings added
            </th>
          </tr>
        </thead>
        <tbody>
          {imports.map((row) => (
            <tr key={row.id}>
              <th scope="row" className="row-head">
                <Link
                  href={readingImportPath(storeId, row.id)}
                  className="wrap-anywhere text-leaf underline underline-offset-3"
                >
                  {row.name}
                </Link>
                {row.kind === 'script' && <span className="quiet font-normal"> script</span>}
              </th>
              <td data-label="when">{formatInstant(row.finishedAt ?? row.createdAt)}</td>
              <td data-label="what became of it">{STATUS_WORDS[row.status] ?? row.status}</td>
              <td className="number" data-label="readings added">
                {formatCount(row.added)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
