import { formatCount, formatTemperature } from '@/app/_format/figures';
import { daysInWords } from '@/lib/domain/longevity/storage-experiment/describe-fit';
import type { StorageExperimentFit } from '@/lib/domain/longevity/storage-experiment/experiment-fit';
import type { TreatmentFit, TreatmentRefusal } from '@/lib/domain/longevity/storage-experiment/treatment-fits';
import { sigmaDays } from '@/lib/domain/longevity/viability-equation';

interface Props {
  treatments: readonly (TreatmentFit | TreatmentRefusal)[];
  fit: StorageExperimentFit | null;
}

const TWO_SIDED_95 = 1.959964;

/** Each treatment by itself, beside what the constants of all say of it. */
export function TreatmentTable({ treatments, fit }: Props) {
  return (
    <section className="grid gap-3" aria-labelledby="treatments">
      <h2 id="treatments">Each treatment</h2>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <thead>
            <tr>
              <th scope="col">treatment</th>
              <th scope="col" className="number">
                counts
              </th>
              <th scope="col" className="number">
                one probit in, by itself
              </th>
              <th scope="col" className="number">
                nineteen times in twenty
              </th>
              {fit && (
                <th scope="col" className="number">
                  by all counts
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {treatments.map((own) => (
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
      </div>
    </section>
  );
}

function range({ sigmaDays: days, standardErrorLog10 }: TreatmentFit): string {
  const factor = 10 ** (TWO_SIDED_95 * standardErrorLog10);
  return `${short(days / factor)}–${short(days * factor)} days`;
}

const short = (days: number) =>
  days < 1000 ? String(Number(days.toPrecision(days < 10 ? 2 : 3))) : formatCount(Number(days.toPrecision(3)));
