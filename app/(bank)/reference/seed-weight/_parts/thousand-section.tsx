import type { z } from 'zod';
import { factSpan, getCropFacts } from '@/lib/domain/reference/all-crops';
import {
  type ThousandSeedWeight,
  thousandSeedWeight,
  thousandSeedWeightAtMoisture,
} from '@/lib/domain/stock/thousand-seed-weight';
import type { seedWeightSchema } from '@/lib/schemas/calculators/seed-weight';
import { CROP_CHOICE } from '../../_parts/crop-choice';
import { MethodFoldOut } from '../../_parts/method-fold-out';
import { AskChoice, AskLines, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import type { Question } from '../../_parts/read-question';
import { WeightStrip } from './weight-strip';
import { figures, seedsPerGram } from './weight-words';

type Asked = z.infer<typeof seedWeightSchema>;

/** Counted replicates: what a thousand seeds weigh, and whether the replicates agree. */
export function ThousandSection({ action, question }: { action: string; question: Question<Asked> }) {
  return (
    <>
      <QuestionForm action={action} question={question}>
        <AskLines
          question={question}
          name="weights"
          label="Weights of the replicates"
          hint="In grams, apart by spaces or a line each; as a rule eight."
          rows={3}
          className="sm:col-span-2"
        />
        <AskNumber question={question} name="perReplicate" label="Seeds in each" hint="As a rule 100." whole />
        <AskNumber question={question} name="weightStep" label="Smallest step of the balance" unit="g" />
        <AskChoice
          question={question}
          name="surface"
          label="Kind of seed"
          options={[
            { value: 'ordinary', label: 'runs freely' },
            { value: 'chaffy', label: 'chaffy (clings together)' },
          ]}
        />
        <AskChoice
          question={question}
          name="seedCrop"
          label="Crop"
          hint="To compare with what its seed usually weighs."
          optional
          options={CROP_CHOICE}
          empty="none"
        />
        <AskNumber question={question} name="weighedAt" label="Moisture when weighed" unit="%" optional />
        <AskNumber question={question} name="wantedAt" label="Weight at a moisture of" unit="%" optional />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
      <Method />
    </>
  );
}

function Answer({ asked }: { asked: Asked }) {
  const result = thousandSeedWeight({
    weightsG: asked.weights,
    seedsPerReplicate: asked.perReplicate,
    surface: asked.surface ?? 'ordinary',
  });
  const { thousandSeedWeightG } = result;
  const { weighedAt, wantedAt } = asked;
  return (
    <section className="sheet grid gap-4" aria-label="Thousand-seed weight found">
      <p className="say">
        A thousand seeds weigh <b>{figures(thousandSeedWeightG)} g</b>, so a gram holds about{' '}
        {seedsPerGram(thousandSeedWeightG)}. {VERDICTS[result.verdict](result)}
      </p>
      <WeightStrip weightsG={asked.weights} dropped={result.dropped} meanG={result.meanG} />
      <table className="ledger">
        <thead>
          <tr>
            <th scope="col">of {result.replicates} replicates</th>
            <th scope="col" className="number">
              figure
            </th>
          </tr>
        </thead>
        <tbody>
          {[
            ['mean, g', figures(result.meanG)],
            ['standard deviation, g', figures(result.standardDeviationG)],
            ['variance, g²', figures(result.variance)],
            ['coefficient of variation, %', result.variationPercent.toFixed(2)],
            ['largest allowed, %', result.limitPercent.toFixed(1)],
          ].map(([name, value]) => (
            <tr key={name}>
              <td>{name}</td>
              <td className="number">{value}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {weighedAt !== undefined && wantedAt !== undefined && (
        <p className="max-w-prose">
          Weighed at {weighedAt} % moisture; at {wantedAt} % the same thousand seeds weigh{' '}
          <b>
            {figures(
              thousandSeedWeightAtMoisture({
                thousandSeedWeightG,
                moisturePercent: weighedAt,
                targetMoisturePercent: wantedAt,
              }),
            )}{' '}
            g
          </b>
          .
        </p>
      )}
      {asked.seedCrop !== undefined && <Usual crop={asked.seedCrop} thousandSeedWeightG={thousandSeedWeightG} />}
    </section>
  );
}

const VERDICTS: Record<ThousandSeedWeight['verdict'], (result: ThousandSeedWeight) => string> = {
  'within-limit': () => 'The replicates agree.',
  'weigh-eight-more': ({ replicates }) =>
    `The replicates vary too much: weigh ${16 - replicates} more of them, 16 in all.`,
  'from-sixteen': ({ dropped, replicates }) =>
    dropped.length === 0
      ? `They vary much, but after ${replicates} the weight stands.`
      : `${dropped.length} of ${replicates} lay more than two standard deviations from the mean and ${dropped.length === 1 ? 'is' : 'are'} left out.`,
  'too-few': ({ replicates }) => `${replicates} replicates only: the limit of variation is made for eight.`,
};

/** What the reference says of the crop, beside the lot's own. */
function Usual({ crop, thousandSeedWeightG }: { crop: string; thousandSeedWeightG: number }) {
  const facts = getCropFacts(crop);
  const span = facts && factSpan(facts, 'seeds per gram');
  if (!span?.ok) return <p className="max-w-prose">The reference has no usual seed weight for {crop.toLowerCase()}.</p>;
  const usual = span.lower === span.upper ? `${span.lower}` : `${span.lower} to ${span.upper}`;
  const own = 1000 / thousandSeedWeightG;
  const far = own > 2 * span.upper || own < span.lower / 2;
  return (
    <p className="max-w-prose">
      {crop} usually has {usual} seeds in a gram ({span.facts[0]?.mark}:{' '}
      {span.facts[0]?.source.replace(/, https?:\S+/, '')}).
      {far && ' These seeds are more than twice as light or heavy: check the count, the balance and the unit.'}
    </p>
  );
}

function Method() {
  return (
    <MethodFoldOut
      page="seed-weight.md"
      equation={
        <p>
          Thousand-seed weight = 1000 <i>x̄</i>/<i>n</i>; variance = (<i>r</i> Σ<i>x</i>² − (Σ<i>x</i>)²) / (<i>r</i>(
          <i>r</i> − 1)); coefficient of variation = 100 <i>s</i>/<i>x̄</i>, for <i>r</i> replicates of <i>n</i> seeds.
          At another moisture: × (100 − then) / (100 − wanted).
        </p>
      }
      limits={
        <p>
          Empty, broken and moist seed weighs in. Replicates scooped from one corner of the bag agree without telling
          what the bag is like. Weigh to four figures, or the balance’s steps look like agreement.
        </p>
      }
      source={
        <p>
          Eight replicates of 100 and the variance: AOSA, read at frsa.org (published). Limits of 4.0 % and 6.0 %, eight
          more, two standard deviations: from memory (ISTA Rules chapter 10).
        </p>
      }
      checked={
        <p>
          The eight weights printed there (the example above): 2.132625 g, 2.014492 %, to the last figure derived from
          them. R’s mean and var on nine sets: to 9 figures.
        </p>
      }
    />
  );
}
