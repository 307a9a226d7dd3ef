import { CROP_CHOICE } from '../../_parts/crop-choice';
import { AskChoice, AskNumber } from '../../_parts/question-fields';
import type { Question } from '../../_parts/read-question';

interface Props {
  question: Question<unknown>;
  /** names of the two fields; the questions of a page have each their own */
  crop: string;
  oil: string;
}

/** Whose oil to work with: a crop's, or that of this very seed. */
export function AskCropOrOil({ question, crop, oil }: Props) {
  return (
    <>
      <AskChoice question={question} name={crop} label="Crop" optional options={CROP_CHOICE} empty="none" />
      <AskNumber
        question={question}
        name={oil}
        label="Oil of the seed"
        hint="Of dry weight; goes before that of the crop."
        unit="%"
        optional
      />
    </>
  );
}
