import { formatCount } from '@/app/_format/figures';
import type { CropDetail } from '@/lib/server/queries/crops';
import { Source } from './source';

type Fact = CropDetail['facts'][number];

/** A figure without needless digits. */
const figure = (value: number) => (value >= 1000 ? formatCount(value) : String(Number(value.toPrecision(3))));

const percentFigure = (value: number) => figure(value * 100);

const WRITTEN: Record<string, { label: string; write: (value: number) => string; unit: string }> = {
  'isolation distance': { label: 'Isolation distance', write: figure, unit: 'm' },
  'minimum plants': { label: 'Plants to save seed from', write: figure, unit: 'plants' },
  'minimum germination': { label: 'Minimum germination standard', write: percentFigure, unit: '%' },
  'seeds per gram': { label: 'Seeds per gram', write: figure, unit: '' },
  'storage life': { label: 'Life in an ordinary cool, dry room', write: figure, unit: 'years' },
  'oil fraction': { label: 'Oil in dry seed', write: percentFigure, unit: '%' },
};

function range({ kind, lower, upper }: Fact): string {
  const written = WRITTEN[kind] ?? { write: figure, unit: '' };
  const ends = [...new Set([lower, upper].filter((end) => end !== null).map(written.write))];
  return ends.length === 0 ? '' : `${ends.join('–')} ${written.unit}`.trim();
}

/** Every fact of the crop, each with its source: where sources disagree, all of them. */
export function CropFacts({ facts }: { facts: Fact[] }) {
  if (facts.length === 0) return null;
  return (
    <section className="grid gap-3" aria-labelledby="facts">
      <h2 id="facts">What is known</h2>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <thead>
            <tr>
              <th scope="col">Fact</th>
              <th scope="col">Figure</th>
              <th scope="col">Source</th>
            </tr>
          </thead>
          <tbody>
            {facts.map((fact) => (
              <tr key={fact.id}>
                <th scope="row" className="row-head">
                  {WRITTEN[fact.kind]?.label ?? fact.kind}
                </th>
                <td className="max-md:col-span-full">
                  <span className="figures whitespace-nowrap">{range(fact)}</span>
                  {fact.text && <span className="label block max-w-prose">{fact.text}</span>}
                </td>
                <td className="why">
                  <Source mark={fact.mark} source={fact.source} />
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}
