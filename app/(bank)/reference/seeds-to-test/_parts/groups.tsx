import { CurvePicture } from '@/app/_components/curve-picture';
import { Notice } from '@/app/_components/notice';
import { formatCount } from '@/app/_format/figures';
import { roundTicks } from '@/app/_format/ticks';
import { operatingCharacteristic } from '@/lib/domain/germination/sample-size/operating-characteristic';
import type { SequentialPlan } from '@/lib/domain/germination/sample-size/sequential-plan';
import { AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import type { Question } from '../../_parts/read-question';
import { type AskedPlan, pictureRange, regrowCurve, workOutPlan } from './asked-plan';
import { ErrorRates } from './error-rates';
import { inHundred } from './in-hundred';
import { Looks } from './looks';
import { planInWords } from './plan-words';
import { SoFar } from './so-far';

/** True germinations over which least and most seeds on average are sought. */
const ALL_LOTS = Array.from({ length: 101 }, (_, percent) => percent / 100);

/** Test in groups and stop as soon as the count is clear. */
export function Groups({ question }: { question: Question<AskedPlan> }) {
  return (
    <QuestionPart id="groups" title="In groups, stopping when the count is clear">
      <QuestionForm action="/reference/seeds-to-test#groups" question={question}>
        <AskNumber question={question} name="line" label="The line" hint="A lot below it is to be regrown." unit="%" />
        <AskNumber
          question={question}
          name="points"
          label="Tell apart"
          hint="Lots so far below and above the line. Nearer ones may go either way."
          unit="points"
        />
        <AskNumber question={question} name="group" label="Seeds in a group" whole />
        <AskNumber
          question={question}
          name="wrongKeep"
          label="Poor lots kept"
          hint="At most, so far below the line."
          unit="in 100"
        />
        <AskNumber
          question={question}
          name="wrongRegrow"
          label="Good lots regrown"
          hint="At most, so far above the line."
          unit="in 100"
        />
        <AskNumber question={question} name="most" label="Most seeds" hint="What the lot can spare." whole />
        <AskNumber question={question} name="tested" label="Tested so far" hint="All groups together." optional whole />
        <AskNumber
          question={question}
          name="germinated"
          label="Germinated so far"
          hint="All groups together."
          optional
          whole
        />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked }: { asked: AskedPlan }) {
  const { line, derived, single, printed } = workOutPlan(asked);
  const singleSeeds = single.ok ? single.steady.seeds : null;
  if (!derived.ok) {
    const { best } = derived;
    return (
      <Notice kind="caution">
        Not reachable with {formatCount(derived.maxSeeds)} seeds. One test of all of them that keeps no more than{' '}
        {inHundred(best.falseKeep)} in 100 poor lots would regrow {inHundred(best.falseRegrow)} in 100 good ones.{' '}
        {singleSeeds === null ? '' : `It takes about ${formatCount(singleSeeds)} seeds in one test. `}Tell apart lots
        further from the line, or allow more errors.
      </Notice>
    );
  }
  const { plan } = derived;
  const expected = ALL_LOTS.map((germination) => operatingCharacteristic(plan, germination).expectedSeeds);
  const most = plan.looks.at(-1)?.seedsTested ?? 0;
  return (
    <div className="sheet grid gap-5">
      {asked.tested !== undefined && asked.germinated !== undefined && (
        <SoFar plan={plan} printed={printed} tested={asked.tested} germinated={asked.germinated} />
      )}
      <p className="say">{planInWords(plan)}</p>
      <p className="max-w-prose">
        It uses {seedsOnAverage(expected)} on average, by how good the lot is, and never more than {formatCount(most)}.{' '}
        {singleSeeds !== null && (
          <>
            One test that errs no more often takes {formatCount(singleSeeds)} seeds, whatever the lot:{' '}
            {savedInWords(singleSeeds, expected)}.
          </>
        )}
      </p>
      <Looks plan={plan} printed={printed} line={line} />
      <Picture asked={asked} plan={plan} printed={printed} />
      <ErrorRates asked={asked} plan={plan} printed={printed} />
      {!printed && (
        <p className="label">
          The printed plan is for a line at 85 %:{' '}
          <a href="/reference/seeds-to-test?line=85&points=5&wrongKeep=5&wrongRegrow=5&group=40&most=400#groups">
            see both there
          </a>
          .
        </p>
      )}
    </div>
  );
}

function seedsOnAverage(expected: number[]): string {
  const least = Math.round(Math.min(...expected));
  const most = Math.round(Math.max(...expected));
  return least === most ? `${formatCount(least)} seeds` : `${formatCount(least)} to ${formatCount(most)} seeds`;
}

function savedInWords(single: number, expected: number[]): string {
  const saved = Math.round(single - Math.max(...expected));
  if (saved <= 0) return 'near the line groups save nothing, away from it they do';
  return `groups save at least ${formatCount(saved)} of them on average`;
}

function Picture({ asked, plan, printed }: { asked: AskedPlan; plan: SequentialPlan; printed: SequentialPlan | null }) {
  const range = pictureRange(asked);
  return (
    <CurvePicture
      label={`Chance that the lot is regrown, falling as its true germination rises through the line at ${asked.line} %.`}
      yTitle="regrown, of 100 such lots"
      xTitle="true germination of the lot, %"
      xRange={range}
      xTicks={roundTicks(range[0], range[1], 6)}
      writeX={(x) => String(Number((x * 100).toFixed(1)))}
      curves={[
        { name: 'this plan', tone: 'leaf', points: regrowCurve(plan, range) },
        ...(printed
          ? [{ name: 'printed plan', tone: 'ochre', dashed: true, points: regrowCurve(printed, range) } as const]
          : []),
      ]}
      marks={[{ at: asked.line / 100, name: 'the line' }]}
    />
  );
}
