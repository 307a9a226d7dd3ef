import { formatMoisture } from '@/app/_format/moisture';
import { targetWeight } from '@/lib/domain/moisture/drying';
import { targetSchema } from '@/lib/schemas/calculators/moisture-and-drying';
import { AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';

const EXAMPLE = { targetGrams: '500', targetFrom: '12.5', targetTo: '7' };

/** What seed weighs when it is dry enough: a jar and a balance instead of an oven. */
export function TargetSection({ action, address }: SectionProps) {
  const question = readQuestion(targetSchema, address, EXAMPLE);
  return (
    <>
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="targetGrams" label="Weight now" hint="Seed alone." unit="g" />
        <AskNumber question={question} name="targetFrom" label="Moisture now" unit="%" />
        <AskNumber question={question} name="targetTo" label="Moisture wanted" unit="%" />
      </QuestionForm>
      {question.input && <Answer {...question.input} />}
    </>
  );
}

function Answer({ targetGrams, targetFrom, targetTo }: { targetGrams: number; targetFrom: number; targetTo: number }) {
  const reached = targetWeight({
    weight: targetGrams,
    moisturePercent: targetFrom,
    targetMoisturePercent: targetTo,
  });
  const change = Math.abs(targetGrams - reached);
  return (
    <section className="sheet grid gap-3" aria-label="Weight at the target">
      <p className="say">
        At {formatMoisture(targetTo)} it weighs <b>{grams(reached)}</b>:{' '}
        {change === 0 ? 'as much as now' : `${grams(change)} of water ${reached < targetGrams ? 'less' : 'more'}`}.
      </p>
      <p className="label">
        Weight × (100 − moisture now) / (100 − moisture wanted), since the dry matter stays. A tenth of a point in the
        moisture now moves the target by {grams(targetGrams * (0.1 / (100 - targetTo)))}.
      </p>
    </section>
  );
}

/** Four figures: a balance shows no more. */
function grams(weight: number): string {
  return `${Number(weight.toPrecision(4))} g`;
}
