import { operatingCharacteristic } from '@/lib/domain/germination/sample-size/operating-characteristic';
import type { SequentialPlan } from '@/lib/domain/germination/sample-size/sequential-plan';
import { type AskedPlan, germinationsShown } from './asked-plan';
import { inHundred } from './in-hundred';

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
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard */}
      <section aria-label="Error rates by true germination" tabIndex={0} className="overflow-x-auto">
        <table className="ledger tight">
          <caption className="sr-only">Error rates by true germination</caption>
          <thead>
            <tr>
              <th scope="col" className="number">
                true, %
              </th>
              <th scope="col" className="number">
                regrown
              </th>
              <th scope="col" className="number">
                seeds
              </th>
              <th scope="col" className="number">
                leans
              </th>
              {printed && (
                <>
                  <th scope="col" className="number">
                    printed: regrown
                  </th>
                  <th scope="col" className="number">
                    printed: seeds
                  </th>
                  <th scope="col" className="number">
                    printed: leans
                  </th>
                </>
              )}
            </tr>
          </thead>
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
      </section>
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
