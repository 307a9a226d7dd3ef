import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import { formatCount, formatTemperature } from '@/app/_format/figures';
import type { ConditionFit, ConditionRefusal } from '@/lib/domain/longevity/storage-experiment/condition-fits';
import { daysInWords } from '@/lib/domain/longevity/storage-experiment/describe-fit';
import type { StorageExperimentFit } from '@/lib/domain/longevity/storage-experiment/experiment-fit';
import { sigmaDays } from '@/lib/domain/longevity/viability-equation';

interface Props {
  conditions: readonly (ConditionFit | ConditionRefusal)[];
  fit: StorageExperimentFit | null;
}

const TWO_SIDED_95 = 1.959964;

/** Each condition by itself, beside what the constants of all say of it. */
export function ConditionTable({ conditions, fit }: Props) {
  return (
    <section className="grid gap-3" aria-labelledby="conditions">
      <h2 id="conditions">Each condition</h2>
      <ScrollBox label="Figures of each condition" className="sheet p-0!">
        <table className="ledger stacked">
          <TableHead
            columns={[
              'condition',
              'counts',
              'one probit in, by itself',
              'nineteen times in twenty',
              ...(fit ? ['by all counts'] : []),
            ]}
            words={['condition']}
          />
          <tbody>
            {conditions.map((own) => (
              <tr key={`${own.temperatureC} ${own.moisturePercent}`}>
                <th scope="row" className="row-head">
                  {own.moisturePercent} % at {formatTemperature(own.temperatureC)}
                  {!own.ok && <span className="quiet block text-sm font-normal">{own.message}</span>}
                </th>
                <td className="number" data-label="counts">
                  {own.counts}
                </td>
                <td className="number" data-label="one probit in, by itself">
                  {own.ok ? daysInWords(own.sigmaDays) : 'not known'}
                </td>
                <td className="number" data-label="nineteen times in twenty">
                  {own.ok ? range(own) : ''}
                </td>
                {fit && (
                  <td className="number" data-label="by all counts">
                    {daysInWords(sigmaDays(fit.constants, own))}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollBox>
    </section>
  );
}

function range({ sigmaDays: days, standardErrorLog10 }: ConditionFit): string {
  const factor = 10 ** (TWO_SIDED_95 * standardErrorLog10);
  return `${short(days / factor)}–${short(days * factor)} days`;
}

const short = (days: number) =>
  days < 1000 ? String(Number(days.toPrecision(days < 10 ? 2 : 3))) : formatCount(Number(days.toPrecision(3)));
