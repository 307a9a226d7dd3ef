import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import { operatingCharacteristic } from '@/lib/domain/germination/sample-size/operating-characteristic';
import type { PublishedPlan } from '@/lib/domain/germination/sample-size/published-sequential-plan';
import type { SequentialPlan } from '@/lib/domain/germination/sample-size/sequential-plan';

interface Props {
  plan: SequentialPlan;
  printed: PublishedPlan | null;
  /** proportion */
  line: number;
}

/** What to do at each look; beside it the printed limits where there are some. */
export function Looks({ plan, printed, line }: Props) {
  const atLine = operatingCharacteristic(plan, line).looks;
  const all = new Set([...plan.looks, ...(printed?.looks ?? [])].map(({ seedsTested }) => seedsTested));
  return (
    <div className="grid gap-2">
      <p className="label max-w-prose">Germinated of all tested. Stops here: of 100 lots exactly at the line.</p>
      <ScrollBox label="Looks of the plan">
        <table className="ledger tight">
          <caption className="sr-only">Limits at each look</caption>
          <TableHead
            columns={[
              'tested',
              'regrow at most',
              'keep from',
              'stops here',
              ...(printed ? ['printed: regrow', 'printed: keep', 'printed: known'] : []),
            ]}
            words={['printed: known']}
          />
          <tbody>
            {[...all]
              .sort((a, b) => a - b)
              .map((seeds) => {
                const ours = plan.looks.find(({ seedsTested }) => seedsTested === seeds);
                const theirs = printed?.looks.find(({ seedsTested }) => seedsTested === seeds);
                const chances = atLine.find(({ seedsTested }) => seedsTested === seeds);
                return (
                  <tr key={seeds}>
                    <th scope="row" className="number bg-transparent! py-3! align-top text-ink!">
                      {seeds}
                    </th>
                    <td className="number">{limit(ours, ours?.regrowAtMost)}</td>
                    <td className="number">{limit(ours, ours?.keepAtLeast)}</td>
                    <td className="number">{chances ? ((chances.regrow + chances.keep) * 100).toFixed(0) : '–'}</td>
                    {printed && (
                      <>
                        <td className="number">{limit(theirs, theirs?.regrowAtMost)}</td>
                        <td className="number">{limit(theirs, theirs?.keepAtLeast)}</td>
                        <td className="whitespace-nowrap">{theirs?.mark ?? '–'}</td>
                      </>
                    )}
                  </tr>
                );
              })}
          </tbody>
        </table>
      </ScrollBox>
    </div>
  );
}

/** A dash where the plan does not look, 'never' where it looks and no count is enough. */
const limit = (look: object | undefined, count: number | null | undefined) => (look ? (count ?? 'never') : '–');
