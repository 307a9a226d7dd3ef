import { Cautions } from '@/app/_components/cautions';
import { Notice } from '@/app/_components/notice';
import { formatMoisture } from '@/app/_format/moisture';
import {
  EQUATION_AGAINST_TABLE,
  RECALLED_TABLE_TEMPERATURE_C,
  recalledMoisture,
} from '@/lib/domain/moisture/recalled-table';
import { settlingMoisture } from '@/lib/domain/moisture/settling';
import { LOW_MOISTURE_LIMIT_RELATIVE_HUMIDITY } from '@/lib/domain/reference/low-moisture-limits';
import { oilRange } from '@/lib/schemas/calculators/crop-oil';
import { reachSchema } from '@/lib/schemas/calculators/moisture-and-drying';
import { AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';
import { AskCropOrOil } from './ask-crop-or-oil';
import { EquilibriumMethod } from './equilibrium-method';
import { seedWords } from './seed-words';

const EXAMPLE = { reachHumidity: '15', reachTemperature: '15', reachCrop: 'Kale' };
/** The table is one of about 25 C; within this of it the two may be compared. */
const NEAR_TABLE_C = 5;

/** Where seed settles in this air. */
export function ReachSection({ action, address }: SectionProps) {
  const question = readQuestion(reachSchema, address, EXAMPLE);
  const { input } = question;
  return (
    <>
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="reachHumidity" label="Relative humidity of the air" unit="%" />
        <AskNumber question={question} name="reachTemperature" label="Temperature" unit="°C" />
        <AskCropOrOil question={question} crop="reachCrop" oil="reachOil" />
      </QuestionForm>
      {input && <Answer {...input} />}
      <Cautions keys={['cobalt-silica-gel', 'freezing-moist-seed']} />
      <EquilibriumMethod />
    </>
  );
}

interface Asked {
  reachHumidity: number;
  reachTemperature: number;
  reachCrop?: string | undefined;
  reachOil?: number | undefined;
}

function Answer({ reachHumidity, reachTemperature, reachCrop, reachOil }: Asked) {
  const oil = oilRange(reachCrop, reachOil);
  if (oil === null) return null;
  const relativeHumidity = reachHumidity / 100;
  const settles = settlingMoisture({ relativeHumidity, temperatureC: reachTemperature, oil });
  if (!settles.ok) {
    return (
      <Notice kind="caution">
        Above 95 % relative humidity the equation gives no figure: seed there simply gets wet, and may sprout or mould.
      </Notice>
    );
  }
  const nearTable = Math.abs(reachTemperature - RECALLED_TABLE_TEMPERATURE_C) <= NEAR_TABLE_C;
  const recalled = reachCrop !== undefined && nearTable ? recalledMoisture(reachCrop, relativeHumidity) : null;
  const spanned = settles.upperPercent - settles.lowerPercent >= 0.05;
  return (
    <section className="sheet grid gap-3" aria-label="What seed settles at">
      <p className="say">
        Dry at {reachTemperature} °C and {reachHumidity} % relative humidity:{' '}
        {seedWords(reachCrop, oil, reachOil !== undefined)} will reach <b>{formatMoisture(settles.moisturePercent)}</b>
        {spanned && ` (${settles.lowerPercent.toFixed(1)} to ${formatMoisture(settles.upperPercent)} over that oil)`}.
      </p>
      <p className="max-w-prose">
        The equation is from memory: expect it to be a point off, now and then more. Beside a table that was recalled
        too it differs by {EQUATION_AGAINST_TABLE.typicalPoints} points on the whole and by{' '}
        {EQUATION_AGAINST_TABLE.largestPoints} at worst.
        {recalled?.ok &&
          ` That table has ${formatMoisture(recalled.moisturePercent)} for ${reachCrop?.toLowerCase()} at about 25 °C.`}
      </p>
      {relativeHumidity < LOW_MOISTURE_LIMIT_RELATIVE_HUMIDITY.value && (
        <p className="max-w-prose">
          Seed drier than air of about 11 % relative humidity would make it keeps no longer for it (twelve species,
          Ellis, Hong & Roberts 1989): there is no need to dry this far.
        </p>
      )}
    </section>
  );
}
