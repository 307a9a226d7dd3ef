import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import { operatingCharacteristic } from '@/lib/domain/germination/sample-size/operating-characteristic';
import type { SequentialPlan } from '@/lib/domain/germination/sample-size/sequential-plan';
import { type AskedPlan, germinationsShown } from './asked-plan';
import { inHundred } from './in-hundred';

/** What is said of each plan. */
const COLUMNS = ['regrown', 'seeds', 'leans'];

interface Props {
  asked: AskedPlan;
  plan: SequentialPlan;
  printed: SequentialPlan | null;
}

/** How often each plan regrows, and how many seeds it uses, by the true germination of the lot. */
export function ErrorRates({ asked, plan, printed }: Props) {
  return (
    <div className="grid gap-2">
      <p className="label max-w-prose">
        By true germination: regrown of 100 such lots, seeds used on average, and points by which the plain share at the
        stop leans.
      </p>
      <ScrollBox label="Error rates by true germination">
        <table className="ledger tight">
          <caption className="sr-only">Error rates by true germination</caption>
          <TableHead columns={['true, %', ...COLUMNS, ...(printed ? COLUMNS.map((name) => `printed: ${name}`) : [])]} />
          <tbody>
            {germinationsShown(asked).map((germination) => (
              <tr key={germination}>
                <th scope="row" className="number bg-transparent! py-3! align-top text-ink!">
                  {Number((germination * 100).toFixed(2))}
                </th>
                <Cells plan={plan} germination={germination} />
                {printed && <Cells plan={printed} germination={germination} />}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </div>
  );
}

function Cells({ plan, germination }: { plan: SequentialPlan; germination: number }) {
  const { regrow, expectedSeeds, bias } = operatingCharacteristic(plan, germination);
  return (
    <>
      <td className="number">{inHundred(regrow)}</td>
      <td className="number">{expectedSeeds.toFixed(0)}</td>
      <td className="number">{leaning(bias)}</td>
    </>
  );
}

function leaning(bias: number): string {
  const points = (bias * 100).toFixed(1);
  if (Number(points) === 0) return '0.0';
  return bias > 0 ? `+${points}` : points.replace('-', '−');
}
