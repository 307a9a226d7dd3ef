import { ScrollBox } from '@/app/_components/scroll-box';
import { TableHead } from '@/app/_components/table-head';
import type { StorageExperimentFit } from '@/lib/domain/longevity/storage-experiment/experiment-fit';
import { normalCdf } from '@/lib/domain/statistics/normal-distribution';

const NAMES = {
  KE: 'KE, how long its seed lives',
  CW: 'CW, what drying gains',
  CH: 'CH, what cooling gains',
  CQ: 'CQ, how that bends',
} as const;
const DECIMALS = { KE: 3, CW: 3, CH: 4, CQ: 6 } as const;

/** The constants of the species and K of each lot, with their standard errors, and how well they fit. */
export function ConstantsTable({ fit }: { fit: StorageExperimentFit }) {
  const { constants, standardErrors, lots, goodness } = fit;
  return (
    <div className="grid gap-4 lg:grid-cols-2">
      <ScrollBox label="Constants and their standard errors" className="sheet p-0!">
        <table className="ledger">
          <TableHead columns={['constant', 'estimate', 'standard error']} words={['constant']} />
          <tbody>
            {(['KE', 'CW', 'CH', 'CQ'] as const).map((key) => (
              <Row
                key={key}
                name={NAMES[key]}
                value={minus(constants[key].toFixed(DECIMALS[key]))}
                error={standardErrors[key]?.toFixed(DECIMALS[key]) ?? 'held'}
              />
            ))}
            {lots.map(({ lot, initialProbits, standardError }) => (
              <Row
                key={lot}
                name={`K of ${lot}: ${Math.round(normalCdf(initialProbits) * 1000) / 10} % at the start`}
                value={minus(initialProbits.toFixed(3))}
                error={standardError.toFixed(3)}
              />
            ))}
          </tbody>
        </table>
      </ScrollBox>
      <dl className="sheet grid content-start gap-3 sm:grid-cols-2">
        <Fact name="counts, conditions" value={`${fit.counts}, ${fit.conditions}`} />
        <Fact name="degrees of freedom" value={String(goodness.degreesOfFreedom)} />
        <Fact name="deviance" value={goodness.deviance.toFixed(1)} />
        <Fact name="Pearson’s chi-square" value={goodness.pearsonChiSquare.toFixed(1)} />
        <Fact
          name="chi-square over degrees of freedom"
          value={goodness.heterogeneity === null ? 'none to judge by' : goodness.heterogeneity.toFixed(2)}
        />
        <Fact
          name="standard errors"
          value={goodness.lacksFit ? `multiplied by ${goodness.standardErrorFactor.toFixed(2)}` : 'as they are'}
        />
        <Fact name="KE with CW, correlation" value={minus(correlation(fit).toFixed(3))} />
        <Fact name="fitted in" value={rangeInWords(fit)} />
      </dl>
    </div>
  );
}

function Row({ name, value, error }: { name: string; value: string; error: string }) {
  return (
    <tr>
      <th scope="row" className="row-head wrap-anywhere">
        {name}
      </th>
      <td className="number">{value}</td>
      <td className="number">{error}</td>
    </tr>
  );
}

function Fact({ name, value }: { name: string; value: string }) {
  return (
    <div>
      <dt className="label">{name}</dt>
      <dd className="figures font-semibold">{value}</dd>
    </div>
  );
}

const minus = (text: string) => text.replace('-', '−');
const correlation = (fit: StorageExperimentFit) => fit.correlation[fit.lots.length]?.[fit.lots.length + 1] ?? 0;

function rangeInWords({ range }: StorageExperimentFit): string {
  const { moistureFromPercent, moistureToPercent, temperatureFromC, temperatureToC } = range;
  const temperature =
    temperatureFromC === temperatureToC ? `${temperatureFromC} °C` : `${temperatureFromC} to ${temperatureToC} °C`;
  return minus(`${moistureFromPercent} to ${moistureToPercent} % moisture, ${temperature}`);
}
