import { formatMoisture } from '@/app/_format/moisture';
import { humidityToSettleAt, temperatureToSettleAt } from '@/lib/domain/moisture/settling';
import { oilRange } from '@/lib/schemas/calculators/crop-oil';
import { airSchema } from '@/lib/schemas/calculators/moisture-and-drying';
import { AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';
import { AskCropOrOil } from './ask-crop-or-oil';
import { seedWords } from './seed-words';

const EXAMPLE = { airMoisture: '6', airCrop: 'Kale', airTemperature: '18', airHumidity: '25' };
/** FAO genebank standards 2014, 4.2.1: dry at 5-20 C and 10-25 % relative humidity. */
const WARMEST_FOR_DRYING_C = 20;

/** What air brings seed to a wanted moisture. */
export function AirSection({ action, address }: SectionProps) {
  const question = readQuestion(airSchema, address, EXAMPLE);
  return (
    <>
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="airMoisture" label="Moisture wanted" unit="%" />
        <AskCropOrOil question={question} crop="airCrop" oil="airOil" />
        <AskNumber
          question={question}
          name="airTemperature"
          label="Temperature you have"
          hint="Gives the humidity needed."
          unit="°C"
          optional
        />
        <AskNumber
          question={question}
          name="airHumidity"
          label="Relative humidity you have"
          hint="Gives the temperature needed."
          unit="%"
          optional
        />
      </QuestionForm>
      {question.input && <Answer {...question.input} />}
    </>
  );
}

interface Asked {
  airMoisture: number;
  airCrop?: string | undefined;
  airOil?: number | undefined;
  airTemperature?: number | undefined;
  airHumidity?: number | undefined;
}

function Answer({ airMoisture, airCrop, airOil, airTemperature, airHumidity }: Asked) {
  const oil = oilRange(airCrop, airOil);
  if (oil === null) return null;
  const wanted = { moisturePercent: airMoisture, oilFraction: (oil.lower + oil.upper) / 2 };
  return (
    <section className="sheet grid gap-3" aria-label="The air needed">
      <p>
        To bring {seedWords(airCrop, oil, airOil !== undefined)} to {formatMoisture(airMoisture)}:
      </p>
      {airTemperature !== undefined && <HumidityNeeded wanted={wanted} temperatureC={airTemperature} />}
      {airHumidity !== undefined && <TemperatureNeeded wanted={wanted} humidityPercent={airHumidity} />}
    </section>
  );
}

interface Wanted {
  moisturePercent: number;
  oilFraction: number;
}

function HumidityNeeded({ wanted, temperatureC }: { wanted: Wanted; temperatureC: number }) {
  const air = humidityToSettleAt({ ...wanted, temperatureC });
  return (
    <p className="say">
      {air.ok ? (
        <>
          At {temperatureC} °C the air must be at <b>{(air.relativeHumidity * 100).toFixed(0)} % relative humidity</b>,
          or drier.
        </>
      ) : (
        <>At {temperatureC} °C seed so moist is past what the equation can say: even air at 95 % leaves it drier.</>
      )}
    </p>
  );
}

function TemperatureNeeded({ wanted, humidityPercent }: { wanted: Wanted; humidityPercent: number }) {
  const air = temperatureToSettleAt({ ...wanted, relativeHumidity: humidityPercent / 100 });
  if (air.ok) {
    return (
      <>
        <p className="say">
          In air of {humidityPercent} % relative humidity it takes{' '}
          <b>{`${air.temperatureC.toFixed(0)} °C`.replace('-', '−')}</b>, or warmer.
        </p>
        {air.temperatureC > WARMEST_FOR_DRYING_C && (
          <p className="max-w-prose">
            Genebank standards dry at 5 to 20 °C and 10 to 25 % relative humidity (FAO 2014): warm air ages seed while
            it dries it. Drier air is the better way.
          </p>
        )}
        <p className="label">
          The humidity is that of the warm air: heating a closed room makes its air drier by itself.
        </p>
      </>
    );
  }
  return (
    <p className="say">
      {air.reason === 'air-too-humid' && 'Above 95 % relative humidity the equation gives no temperature.'}
      {air.reason === 'warmer-than-the-equation-goes' &&
        `In air of ${humidityPercent} % relative humidity no warmth up to 80 °C would do it: drier air is needed.`}
      {air.reason === 'colder-than-the-equation-goes' &&
        `In air of ${humidityPercent} % relative humidity seed settles drier than that at any temperature of a store.`}
    </p>
  );
}
