import { formatDate, formatPercentFigure } from '@/app/_format/figures';
import type { LotForecast } from '@/lib/server/queries/lot-forecast';

/** The picture's figures as a table: for screen readers, and for whoever wants to copy them. */
export function ForecastTable({ forecast }: { forecast: LotForecast }) {
  const alternative = forecast.whatIf?.ok ? forecast.whatIf.curve : null;
  return (
    <details>
      <summary className="cursor-pointer py-2 font-semibold">The same figures in a table</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section aria-label="Viability over the years" tabIndex={0} className="overflow-x-auto">
        <table className="ledger">
          <caption className="sr-only">Viability over the years, percent alive</caption>
          <thead>
            <tr>
              <th scope="col">date</th>
              <th scope="col" className="number">
                most likely
              </th>
              <th scope="col" className="number">
                nine times in ten
              </th>
              {alternative && (
                <th scope="col" className="number">
                  what if
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {forecast.table.map((point) => (
              <tr key={point.day}>
                <td className="py-1.5!">
                  {formatDate(point.date)}
                  {point.day > forecast.todayDay && <span className="quiet"> ahead</span>}
                </td>
                <td className="number py-1.5!">{formatPercentFigure(point.median)} %</td>
                <td className="number py-1.5!">
                  {formatPercentFigure(point.lower)}–{formatPercentFigure(point.upper)} %
                </td>
                {alternative && <td className="number py-1.5!">{alternativeAt(alternative, point.day)}</td>}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {forecast.tests.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        <section aria-label="Tests" tabIndex={0} className="mt-4 overflow-x-auto">
          <table className="ledger">
            <caption className="sr-only">Tests</caption>
            <thead>
              <tr>
                <th scope="col">test set on</th>
                <th scope="col" className="number">
                  alive of sown
                </th>
                <th scope="col" className="number">
                  nine times in ten
                </th>
              </tr>
            </thead>
            <tbody>
              {forecast.tests.map((test) => (
                <tr key={test.number}>
                  <td className="py-1.5!">{formatDate(test.setOn)}</td>
                  <td className="number py-1.5!">
                    {test.alive} of {test.sown}
                  </td>
                  <td className="number py-1.5!">
                    {formatPercentFigure(test.lower)}–{formatPercentFigure(test.upper)} %
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </details>
  );
}

/** The other curve between its two nearest points. */
function alternativeAt(curve: LotForecast['curve'], day: number): string {
  const after = curve.findIndex((point) => point.day >= day);
  const [left, right] = [curve[after - 1], curve[after]];
  if (!right || (!left && right.day !== day)) return '–';
  if (!left || right.day === day) return `${formatPercentFigure(right.median)} %`;
  const share = (day - left.day) / (right.day - left.day);
  return `${formatPercentFigure(left.median + share * (right.median - left.median))} %`;
}
