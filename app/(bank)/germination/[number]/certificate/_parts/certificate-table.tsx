import clsx from 'clsx';
import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import type { TestSummary } from '@/lib/domain/germination/result';
import type { ClassedReplicate } from '@/lib/domain/germination/seed-classes';
import { CLASS_COLUMNS, ClassCells } from '../../../_parts/class-cells';

interface Props {
  replicates: (ClassedReplicate & { position: number })[];
  summary: TestSummary;
}

/** Low on a screen, lower on paper: the sheet is one page. */
const CELL = 'py-1! print:py-0.5!';
const ROW_HEAD = `px-2! ${CELL} text-ink!`;

/** Every replicate, their sum, and whole percents that add to 100. */
export function CertificateTable({ replicates, summary }: Props) {
  return (
    <ScrollBox label="Replicates">
      <table className="ledger tight">
        <caption className="sr-only">Replicates and their sum</caption>
        <TableHead columns={['replicate', ...CLASS_COLUMNS]} words={['replicate']} />
        <tbody>
          {replicates.map((replicate) => (
            <tr key={replicate.position}>
              <th scope="row" className={clsx('figures', ROW_HEAD)}>
                {replicate.position}
              </th>
              <ClassCells of={replicate} className={CELL} />
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" className={ROW_HEAD}>
              together
            </th>
            <ClassCells of={{ seeds: summary.seeds, ...summary.totals }} className={clsx(CELL, 'font-semibold')} />
          </tr>
          <tr>
            <th scope="row" className={ROW_HEAD}>
              percent
            </th>
            <ClassCells of={{ seeds: 100, ...summary.roundedPercentages }} className={CELL} />
          </tr>
        </tfoot>
      </table>
    </ScrollBox>
  );
}
