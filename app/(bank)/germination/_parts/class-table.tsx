import { formatCount } from '@/app/_format/figures';
import type { TestSummary } from '@/lib/domain/germination/result';
import { SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import { ClassIcon } from './seed-glyph';

const MEANING = {
  normal: 'all parts of a plant',
  abnormal: 'cannot become a plant',
  hard: 'took up no water, alive',
  fresh: 'dormant, alive',
  dead: '',
} as const;

/** The five classes: whole percents that add to 100, and the seeds counted. */
export function ClassTable({ summary }: { summary: TestSummary }) {
  return (
    <table className="ledger">
      <thead>
        <tr>
          <th scope="col">Class</th>
          <th scope="col" className="number">
            %
          </th>
          <th scope="col" className="number">
            seeds
          </th>
        </tr>
      </thead>
      <tbody>
        {SEED_CLASSES.map((seedClass) => (
          <tr key={seedClass}>
            <th scope="row" className="row-head py-2! font-normal!">
              <span className="flex items-center gap-2">
                <ClassIcon state={seedClass} />
                <span className="sm:flex sm:items-baseline sm:gap-2">
                  {seedClass}
                  {MEANING[seedClass] && <span className="label block">{MEANING[seedClass]}</span>}
                </span>
              </span>
            </th>
            <td className="number py-2!">{summary.roundedPercentages[seedClass]}</td>
            <td className="number py-2!">{formatCount(summary.totals[seedClass])}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row" className="row-head py-2!">
            together
          </th>
          <td className="number py-2!">100</td>
          <td className="number py-2!">{formatCount(summary.seeds)}</td>
        </tr>
      </tfoot>
    </table>
  );
}
