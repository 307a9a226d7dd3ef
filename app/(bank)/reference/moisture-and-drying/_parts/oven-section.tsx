import { Cautions } from '@/app/_components/cautions';
import { TableHead } from '@/app/_components/table-head';
import { formatMoisture, formatPoints } from '@/app/_format/moisture';
import { type OvenTest, ovenTest } from '@/lib/domain/moisture/oven-test';
import { getCropFacts } from '@/lib/domain/reference/all-crops';
import { ovenSchema } from '@/lib/schemas/calculators/moisture-and-drying';
import { CROP_CHOICE } from '../../_parts/crop-choice';
import { MethodFoldOut } from '../../_parts/method-fold-out';
import { AskChoice, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';
import { OvenAdviceList } from './oven-advice-list';

const EXAMPLE = {
  ovenCrop: 'Kale',
  dishA: '20.114',
  freshA: '25.236',
  dryA: '24.821',
  dishB: '19.874',
  freshB: '25.051',
  dryB: '24.625',
  ovenStep: '0.001',
};

/** Moisture by the oven, and how to run it. */
export function OvenSection({ action, address }: SectionProps) {
  const question = readQuestion(ovenSchema, address, EXAMPLE);
  const { input } = question;
  const crop = input?.ovenCrop === undefined ? undefined : getCropFacts(input.ovenCrop);
  return (
    <>
      <Cautions keys={['oven-heat', 'oven-sample-is-dead']} />
      <QuestionForm action={action} question={question}>
        <AskChoice question={question} name="ovenCrop" label="Crop" optional options={CROP_CHOICE} empty="none" />
        <AskNumber question={question} name="ovenStep" label="Smallest step of the balance" unit="g" />
        <span className="hidden lg:block" />
        <AskNumber question={question} name="dishA" label="First sample: dish and lid" unit="g" />
        <AskNumber question={question} name="freshA" label="With fresh seed" unit="g" />
        <AskNumber question={question} name="dryA" label="With dried seed" unit="g" />
        <AskNumber question={question} name="dishB" label="Second sample: dish and lid" unit="g" optional />
        <AskNumber question={question} name="freshB" label="Second, with fresh seed" unit="g" optional />
        <AskNumber question={question} name="dryB" label="Second, with dried seed" unit="g" optional />
        <AskNumber
          question={question}
          name="wetBefore"
          label="Before pre-drying"
          hint="Seed alone; only where it was pre-dried."
          unit="g"
          optional
        />
        <AskNumber
          question={question}
          name="wetAfter"
          label="After pre-drying"
          hint="The same seed."
          unit="g"
          optional
        />
      </QuestionForm>
      {input && <Answer test={ovenTest(weightsOf(input))} stepG={input.ovenStep} />}
      {crop && <OvenAdviceList crop={crop} />}
      <Method />
    </>
  );
}

type Asked = NonNullable<ReturnType<typeof ovenSchema.safeParse>['data']>;

function weightsOf(input: Asked): Parameters<typeof ovenTest>[0] {
  const { dishB, freshB, dryB, wetBefore, wetAfter } = input;
  const first = { dish: input.dishA, dishAndFresh: input.freshA, dishAndDry: input.dryA };
  const second =
    dishB !== undefined && freshB !== undefined && dryB !== undefined
      ? [{ dish: dishB, dishAndFresh: freshB, dishAndDry: dryB }]
      : [];
  return {
    samples: [first, ...second],
    predrying: wetBefore !== undefined && wetAfter !== undefined ? { beforeG: wetBefore, afterG: wetAfter } : null,
    stepG: input.ovenStep,
  };
}

function Answer({ test, stepG }: { test: OvenTest; stepG: number }) {
  const { verdict } = test;
  return (
    <section className="sheet grid gap-3" aria-label="Moisture by the oven">
      <p className="say">
        {verdict.kind === 'differ' ? (
          <>
            <b>The two samples do not agree</b>: {verdict.differencePoints.toFixed(2)} points apart, and at most{' '}
            {verdict.tolerancePoints} is allowed. Weigh and dry two new samples.
          </>
        ) : (
          <>
            Moisture <b>{formatMoisture(test.moisturePercent ?? 0)}</b>, give or take{' '}
            {formatPoints(test.standardPoints)} points.{' '}
            {verdict.kind === 'agree'
              ? `The samples agree: ${verdict.differencePoints.toFixed(2)} points apart, ${verdict.tolerancePoints} allowed.`
              : 'From one sample only: a second one would show whether to believe it.'}
          </>
        )}
      </p>
      <table className="ledger stacked">
        <TableHead columns={['sample', 'moisture, %', 'balance leaves open, points']} words={['sample']} />
        <tbody>
          {test.samples.map((sample, index) => (
            <tr key={index === 0 ? 'first' : 'second'}>
              <th scope="row" className="row-head">
                {index === 0 ? 'first' : 'second'}
              </th>
              <td className="number" data-label="moisture, %">
                {sample.moisturePercent.toFixed(2)}
              </td>
              <td className="number" data-label="balance leaves open, points">
                {formatPoints(sample.standardPoints)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="label">
        A balance that reads to {stepG} g can be wrong by {formatPoints(test.largestPoints)} points at most
        {test.predriedPercent !== null && `; pre-drying took ${test.predriedPercent.toFixed(2)} % of the first weight`}.
      </p>
    </section>
  );
}

function Method() {
  return (
    <MethodFoldOut
      page="moisture.md"
      equation={
        <>
          <p>
            100 (<i>M₂</i> − <i>M₃</i>) / (<i>M₂</i> − <i>M₁</i>): dish and lid <i>M₁</i>, with fresh seed <i>M₂</i>,
            with dried seed <i>M₃</i>. Pre-dried: <i>S₁</i> + <i>S₂</i> − <i>S₁S₂</i>/100.
          </p>
          <p>
            Give or take: one standard deviation, from rounding on the balance (a step over √12 at each reading) or half
            the difference of the two samples, whichever is more.
          </p>
        </>
      }
      limits={
        <p>
          The oven takes volatile oils for water. Uneven ovens, damp picked up while cooling and a poor sample are not
          in the balance’s share; two samples show some of it.
        </p>
      }
      source={
        <p>
          Formula, 103 °C for 17 hours: after the ISTA Rules 2016, read in a thesis (published). Two samples within 0.2
          points: from memory for seed, published for grain (ASAE S352). Which crops are held to the low method, hours
          at 130 °C: from memory.
        </p>
      }
      checked={<p>R’s symbolic slopes: to 10 figures; a million simulated weighings: within 0.5 %.</p>}
    />
  );
}
