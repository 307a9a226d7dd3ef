import { ScrollBox } from '@/app/_components/scroll-box';
import { formatCount, formatPercent } from '@/app/_format/figures';
import type { GerminationReport } from '@/lib/server/queries/germination-report';

/** Ways of testing shown; the rest is summed up. */
const METHODS_SHOWN = 12;

/** Sums of each crop. */
export function CropTable({ rows }: { rows: GerminationReport['byCrop'] }) {
  return (
    <section className="grid gap-3" aria-labelledby="by-crop">
      <h2 id="by-crop">By crop</h2>
      <ScrollBox label="Sums by crop" className="sheet p-0!">
        <table className="ledger tight">
          <thead>
            <tr>
              <th scope="col">crop</th>
              {['tests', 'lots', 'seeds', 'normal', 'outside tolerance', 'lots likely below'].map((name) => (
                <th key={name} scope="col" className="number">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.cropName}>
                <th scope="row" className="row-head">
                  {row.cropName}
                </th>
                <td className="number">{formatCount(row.tests)}</td>
                <td className="number">{formatCount(row.lots)}</td>
                <td className="number">{formatCount(row.seeds)}</td>
                <td className="number">{row.seeds > 0 ? formatPercent(row.normal / row.seeds) : '–'}</td>
                <td className="number">
                  {row.comparable > 0 ? `${formatCount(row.outside)} of ${formatCount(row.comparable)}` : '–'}
                </td>
                <td className="number">{formatCount(row.lotsBelow)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </section>
  );
}

/** How often each way of testing was used, the most used first. */
export function MethodTable({ rows }: { rows: GerminationReport['byMethod'] }) {
  const shown = rows.slice(0, METHODS_SHOWN);
  const rest = rows.slice(METHODS_SHOWN);
  const others = rest.reduce((sum, { tests }) => sum + tests, 0);
  return (
    <section className="grid gap-3" aria-labelledby="by-method">
      <h2 id="by-method">By method</h2>
      <table className="ledger sheet max-w-3xl p-0!">
        <thead>
          <tr>
            <th scope="col">method, as it was noted</th>
            <th scope="col" className="number">
              tests
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ method, tests }) => (
            <tr key={method ?? ''}>
              <th scope="row" className="row-head wrap-anywhere font-normal!">
                {method ?? <span className="quiet">not noted</span>}
              </th>
              <td className="number">{formatCount(tests)}</td>
            </tr>
          ))}
          {rest.length > 0 && (
            <tr>
              <th scope="row" className="row-head font-normal!">
                {formatCount(rest.length)} others
              </th>
              <td className="number">{formatCount(others)}</td>
            </tr>
          )}
        </tbody>
      </table>
    </section>
  );
}
