import { formatChance, formatPercentFigure } from '@/app/_format/figures';
import type { LotFallsBelow } from '@/lib/server/queries/lot-falls-below';

/** The chance of falling below the line in each of the coming years. */
export function FallsBelowTable({ fallsBelow: { byYear, threshold } }: { fallsBelow: LotFallsBelow }) {
  const line = `${formatPercentFigure(threshold)} %`;
  return (
    <details>
      <summary className="cursor-pointer py-2 font-semibold">When it falls below the line, year by year</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section aria-label="Falling below the line" tabIndex={0} className="overflow-x-auto">
        <table className="ledger">
          <caption className="sr-only">Chance of falling below {line} in each year, and by its end</caption>
          <thead>
            <tr>
              <th scope="col">year</th>
              <th scope="col" className="number">
                falls below in it
              </th>
              <th scope="col" className="number">
                below by its end
              </th>
            </tr>
          </thead>
          <tbody>
            {byYear.map(({ year, chanceInYear, chanceByEnd }, index) => (
              <tr key={year}>
                <td className="py-1.5!">
                  {year}
                  {index === 0 && <span className="quiet"> what is left of it</span>}
                </td>
                <td className="number py-1.5!">{formatChance(chanceInYear)}</td>
                <td className="number py-1.5!">{formatChance(chanceByEnd)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
