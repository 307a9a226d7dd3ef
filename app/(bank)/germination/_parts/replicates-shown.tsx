import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import type { ClassedReplicate } from '@/lib/domain/germination/seed-classes';
import { CLASS_COLUMNS, ClassCells } from './class-cells';
import { Dish } from './dish';

/** Every replicate as it was counted: the dishes to look at, and the same figures in a table. */
export function ReplicatesShown({ replicates }: { replicates: (ClassedReplicate & { position: number })[] }) {
  return (
    <div className="grid gap-4">
      <ul className="grid grid-cols-2 gap-4 sm:grid-cols-4">
        {replicates.map((replicate) => (
          <li key={replicate.position} className="grid justify-items-center gap-1">
            <Dish
              seeds={replicate.seeds}
              counts={replicate}
              label={`Replicate ${replicate.position}: ${replicate.normal} normal of ${replicate.seeds} seeds`}
              className="w-full max-w-44"
            />
            <span className="text-sm">
              <span className="quiet">{replicate.position}:</span>{' '}
              <span className="figures">
                {replicate.normal} of {replicate.seeds}
              </span>
            </span>
          </li>
        ))}
      </ul>
      <details>
        <summary className="w-fit cursor-pointer py-2.5 font-semibold">Counts in a table</summary>
        <ScrollBox label="Counts of each replicate">
          <table className="ledger">
            <TableHead columns={['Replicate', ...CLASS_COLUMNS]} words={['Replicate']} />
            <tbody>
              {replicates.map((replicate) => (
                <tr key={replicate.position}>
                  <td className="figures py-2!">{replicate.position}</td>
                  <ClassCells of={replicate} className="py-2!" />
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollBox>
      </details>
    </div>
  );
}
