import { COMMON_TEMPERATURE_COEFFICIENTS } from '@/lib/domain/reference/longevity-constants';
import { AskChoice, AskNumber } from '../../../_parts/question-fields';
import { QuestionForm } from '../../../_parts/question-form';
import type { Question } from '../../../_parts/read-question';

/** How temperature enters the fit, and the condition to speak of. */
export function FitQuestion({ action, question }: { action: string; question: Question<unknown> }) {
  const { CH, CQ } = COMMON_TEMPERATURE_COEFFICIENTS;
  return (
    <QuestionForm action={action} question={question} submit="Fit again">
      <AskChoice
        question={question}
        name="coefficients"
        label="Temperature coefficients"
        hint={`The common ones are ${CH} and ${CQ}. Fitting takes three temperatures or more, far apart.`}
        options={[
          { value: 'fixed', label: 'held at the common ones' },
          { value: 'fitted', label: 'fitted to these counts' },
        ]}
      />
      <AskNumber question={question} name="moisture" label="Moisture to speak of" unit="%" />
      <AskNumber question={question} name="temperature" label="Temperature to speak of" unit="°C" />
    </QuestionForm>
  );
}
