import Link from 'next/link';
import { Caption } from '@/app/_components/caption';
import { IntervalStrips, type Strip } from '@/app/_components/interval-strips';
import { Notice } from '@/app/_components/notice';
import { formatCount, formatDate } from '@/app/_format/figures';
import { testPath } from '@/app/_format/links';
import { boundsOutwards, LEVEL_IN_WORDS } from '@/app/(bank)/germination/_parts/result-words';
import { dormantInWords } from '@/app/(bank)/reference/hard-and-dormant-seed/_parts/dormant-words';
import { germinationOf, inPercent } from '@/app/(bank)/reference/hard-and-dormant-seed/_parts/shares';
import {
  VIABILITY_CLASS_LABELS,
  VIABILITY_CLASSES,
  type ViabilityClass,
} from '@/lib/domain/germination/dormancy/viability-kinds';
import type { ViabilityTestDetail } from '@/lib/server/queries/viability-test-detail';
import { Finding } from '../../_parts/finding';
import { type Findings, readFindings, type TrayTogether } from './read-findings';
import { besideForecastInWords, FORECAST_STANDS, foundInWords } from './viability-words';

/** What the test says: a sentence, the picture, what to do next, and why the forecast stands. */
export function ViabilityFindings({ test, today }: { test: ViabilityTestDetail; today: string }) {
  const findings = readFindings(test, today);
  const { result, together, dormant, forecast, advice } = findings;
  return (
    <section className="sheet grid gap-5" aria-label="What the test says">
      <Caption text={foundInWords(result, test.tray?.number ?? null)} />
      {together && <Together together={together} test={test} />}
      {advice.length > 0 && (
        <Notice kind="caution">
          <ul className="grid gap-1">
            {advice.map(({ reason, sentence }) => (
              <li key={reason}>{sentence}</li>
            ))}
          </ul>
        </Notice>
      )}
      <div className="grid items-start gap-6 lg:grid-cols-2">
        <div className="grid gap-3">
          <IntervalStrips strips={stripsOf(test, findings)} standard={null} />
          <p className="label">
            Lines show where the truth lies {LEVEL_IN_WORDS} (
            {together ? 'Wilson interval, extended for seed that nobody looked at' : 'Wilson interval'}); the forecast’s
            line holds it 9 times in 10.
          </p>
        </div>
        <Classes test={test} />
      </div>
      <dl className="grid gap-3">
        <Finding term="Against the lot’s forecast">
          {forecast && test.lot.forecast
            ? besideForecastInWords(forecast, test.lot.forecast)
            : whyNotBeside(test, findings)}{' '}
          <span className="quiet">{FORECAST_STANDS}</span>
        </Finding>
        {dormant && test.germination && (
          <Finding term="Against germination">
            <Link href={testPath(test.germination.number)}>{test.germination.number}</Link> of{' '}
            {formatDate(test.germination.finishedOn)} gave {inPercent(test.germination.normal / test.germination.seeds)}{' '}
            % normal seedlings.{' '}
            {test.kind === 'tetrazolium' || dormant.verdict === 'contradiction'
              ? dormantInWords(dormant, 'stained')
              : 'Firm seed may be dead, so the difference shows no dormancy.'}
          </Finding>
        )}
        {'worthless' in result && (
          <Finding term="Empty and eaten">
            {inPercent(result.worthless.proportion)} % ({between(result.worthless)}) were empty or eaten by insects.
            {result.firmOfFull && ` Of the full seeds ${inPercent(result.firmOfFull.proportion)} % were firm.`}
          </Finding>
        )}
      </dl>
    </section>
  );
}

const between = (estimate: { interval: { lower: number; upper: number } }) => {
  const { lower, upper } = boundsOutwards(estimate);
  return `likely ${lower} to ${upper}`;
};

function whyNotBeside({ lot, tray }: ViabilityTestDetail, { old, together }: Findings): string {
  if (!lot.forecast) return `There is no forecast to hold it against: ${lot.noForecastBecause ?? 'nothing is stored'}.`;
  if (old) return 'It is more than half a year old, and seed ages: it is not held against the forecast of today.';
  if (tray && together === 'not-closed') return `${tray.number} has to be closed first.`;
  return 'It cannot be held against the forecast.';
}

/** Seedlings of the germination test and what was found alive of the rest, in one figure. */
function Together({ together, test }: { together: NonNullable<Findings['together']>; test: ViabilityTestDetail }) {
  if (together === 'not-closed') {
    return (
      <p className="max-w-prose">
        {test.tray?.number} is still being counted. Once it is closed, it stands here how much of the lot is alive:
        seedlings and this seed together.
      </p>
    );
  }
  if (together === 'does-not-fit') {
    return (
      <p className="max-w-prose">
        {test.tray?.testNumber} leaves less seed over than was examined here: correct one of the two. Until then no
        share of the lot is worked out.
      </p>
    );
  }
  const { lower, upper } = boundsOutwards({ interval: together.result });
  const most = test.kind === 'cut' ? 'at most ' : '';
  return (
    <div className="grid gap-2">
      <Caption
        text={`With the ${formatCount(together.normal)} normal seedlings of ${together.testNumber}, **${most}${inPercent(together.result.proportion)} % of the lot is alive**; likely ${most}between ${lower} and ${upper} %.`}
      />
      <p className="max-w-prose">{carriedInWords(together)}</p>
      <p>
        <Link href={calculatorLink(together)}>The same figures in the calculator</Link>
      </p>
    </div>
  );
}

function carriedInWords({ hardOrFresh, looked, of, result, seeds }: TrayTogether): string {
  const tests = of.length > 1 ? ` (${of.join(', ')})` : '';
  const carried = Math.round(result.carriedOver * seeds);
  if (carried > 0) {
    return `${formatCount(looked)} of the ${formatCount(hardOrFresh)} hard and fresh seeds were looked at${tests}; what they showed is carried over to the ${formatCount(carried)} others, and the limits allow for that. It holds if they were picked blindly.`;
  }
  return looked > hardOrFresh
    ? `More was looked at${tests} than is classed hard or fresh: what was found dead is counted as dead. Nothing is carried over.`
    : `All hard and fresh seed was looked at${tests}, so that nothing is carried over.`;
}

/** The side-sample calculator filled from the records: hard and fresh seed as one kind. */
function calculatorLink({ seeds, normal, hardOrFresh, looked, alive }: TrayTogether): string {
  const left = Math.max(hardOrFresh, looked);
  return `/reference/hard-and-dormant-seed?seeds=${seeds}&normal=${normal}&fresh=${left}&freshLooked=${looked}&freshAlive=${alive}#side-samples`;
}

function stripsOf(test: ViabilityTestDetail, { result, together }: Findings): Strip[] {
  const name = result.shows === 'alive' ? 'alive' : 'at most alive';
  const { forecast } = test.lot;
  const strips: Strip[] = [];
  if (typeof together === 'object' && together) {
    strips.push({ name, proportion: together.result.proportion, interval: together.result });
    strips.push({ name: 'germinated', ...germinationOf(together.normal, together.seeds), quiet: true });
  } else {
    strips.push({ name: test.tray ? 'of those left' : name, ...result.estimate });
    if (test.germination && !test.tray) {
      strips.push({
        name: 'germinated',
        ...germinationOf(test.germination.normal, test.germination.seeds),
        quiet: true,
      });
    }
  }
  if (forecast) strips.push({ name: 'forecast today', proportion: forecast.median, interval: forecast, quiet: true });
  return strips;
}

function Classes({ test }: { test: ViabilityTestDetail }) {
  const classes: readonly ViabilityClass[] = VIABILITY_CLASSES[test.kind];
  const of = (name: ViabilityClass) => test.counts[name] ?? 0;
  const seeds = classes.reduce((sum, name) => sum + of(name), 0);
  return (
    <table className="ledger">
      <thead>
        <tr>
          <th scope="col">Found</th>
          <th scope="col" className="number">
            seeds
          </th>
        </tr>
      </thead>
      <tbody>
        {classes.map((name) => (
          <tr key={name}>
            <th scope="row" className="row-head py-2! font-normal!">
              {VIABILITY_CLASS_LABELS[name]}
            </th>
            <td className="number py-2!">{formatCount(of(name))}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row" className="row-head py-2!">
            together
          </th>
          <td className="number py-2!">{formatCount(seeds)}</td>
        </tr>
      </tfoot>
    </table>
  );
}
