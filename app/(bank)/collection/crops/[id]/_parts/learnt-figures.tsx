import { timesFigure } from '@/app/_format/bank-learning-words';
import { formatPercentFigure } from '@/app/_format/figures';
import { asTimesAsFast, asViability, type CropLearning } from '@/lib/domain/longevity/bank-learning/learn-crop-prior';
import { normalCdf } from '@/lib/domain/statistics/normal-distribution';

/** The figures behind the sentence: expected before, what the tests say, and between what limits. */
export function LearntFigures({ learning }: { learning: Extract<CropLearning, { ok: true }> }) {
  const { published, suggested, initial, logRate } = learning;
  const alive = asViability(initial.mean);
  const times = logRate && asTimesAsFast(logRate.mean);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section aria-label="Learnt figures" tabIndex={0} className="overflow-x-auto">
      <table className="ledger">
        <caption className="sr-only">Expected before, and what the tests say</caption>
        <thead>
          <tr>
            <th scope="col">of this crop's lots</th>
            <th scope="col" className="number">
              expected before
            </th>
            <th scope="col" className="number">
              tests say
            </th>
            <th scope="col" className="number">
              nine times in ten
            </th>
          </tr>
        </thead>
        <tbody>
          <Row
            name="alive when fresh, a typical lot"
            before={`${formatPercentFigure(normalCdf(published.initial.mean))} %`}
            now={`${formatPercentFigure(alive.estimate)} %`}
            limits={`${formatPercentFigure(alive.lower)}–${formatPercentFigure(alive.upper)} %`}
          />
          <Row
            name="two lots in three lie between"
            before={percents(published.initial)}
            now={percents(suggested.initial)}
          />
          <Row
            name="times as fast as published, a typical lot"
            before={timesFigure(Math.exp(published.logRate.mean))}
            now={times ? timesFigure(times.estimate) : 'not yet'}
            limits={times ? `${timesFigure(times.lower)}–${timesFigure(times.upper)}` : undefined}
          />
          <Row
            name="two lots in three lie between"
            before={factors(published.logRate)}
            now={logRate ? factors(suggested.logRate) : 'not yet'}
          />
        </tbody>
      </table>
    </section>
  );
}

function Row({ name, before, now, limits = '' }: { name: string; before: string; now: string; limits?: string }) {
  return (
    <tr>
      <th scope="row" className="min-w-32 bg-transparent! py-1.5! text-left font-normal whitespace-normal!">
        {name}
      </th>
      <td className="number py-1.5!">{before}</td>
      <td className="number py-1.5!">
        <b>{now}</b>
      </td>
      <td className="number py-1.5!">{limits}</td>
    </tr>
  );
}

const percents = ({ mean, sd }: { mean: number; sd: number }) =>
  `${formatPercentFigure(normalCdf(mean - sd))}–${formatPercentFigure(normalCdf(mean + sd))} %`;
const factors = ({ mean, sd }: { mean: number; sd: number }) =>
  `${timesFigure(Math.exp(mean - sd))}–${timesFigure(Math.exp(mean + sd))}`;
