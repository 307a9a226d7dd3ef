import { formatTemperature } from '@/app/_format/figures';
import { AskChoice, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import type { Question } from '../../_parts/read-question';

interface Props {
  action: string;
  question: Question<unknown>;
  choices: {
    crops: { id: string; name: string }[];
    constants: { id: string; name: string }[];
    stores: { id: string; name: string; targetTemperatureC: number }[];
  };
}

const BEFORE = ['beforeYears', 'beforeMoisture', 'beforeTemperature'];

export function StorageForm({ action, question, choices }: Props) {
  const isBeforeOpen = BEFORE.some((field) => question.typed[field] || question.errors[field]);
  return (
    <QuestionForm action={action} question={question}>
      <AskChoice question={question} name="crop" label="Crop" empty="none" options={choices.crops.map(optionOf)} />
      <AskChoice
        question={question}
        name="constants"
        label="Constants"
        optional
        empty="those of the crop"
        options={choices.constants.map(optionOf)}
      />
      <AskChoice
        question={question}
        name="store"
        label="Mark a store"
        optional
        empty="none"
        options={choices.stores.map(({ id, name, targetTemperatureC }) => ({
          value: id,
          label: `${name}, ${formatTemperature(targetTemperatureC)}`,
        }))}
      />
      <AskNumber question={question} name="moisture" label="Moisture" unit="%" />
      <AskNumber question={question} name="temperature" label="Temperature" unit="°C" />
      <AskNumber question={question} name="years" label="Years to keep it" unit="years" />
      <AskNumber question={question} name="initial" label="Alive at first" unit="%" />
      <AskNumber question={question} name="wanted" label="Still wanted alive" unit="%" />
      <details open={isBeforeOpen} className="sm:col-span-2 lg:col-span-3">
        <summary className="min-h-11 cursor-pointer py-2 font-semibold">It lay elsewhere before</summary>
        <div className="grid gap-4 sm:grid-cols-2 lg:grid-cols-3">
          <AskNumber question={question} name="beforeYears" label="For" unit="years" optional />
          <AskNumber question={question} name="beforeMoisture" label="At a moisture of" unit="%" optional />
          <AskNumber question={question} name="beforeTemperature" label="And at" unit="°C" optional />
        </div>
      </details>
    </QuestionForm>
  );
}

const optionOf = ({ id, name }: { id: string; name: string }) => ({ value: id, label: name });
