import {
  COOLING_MINUTES,
  GRINDING_WORDS,
  type OvenAdvice,
  type OvenLine,
  ovenMethodFor,
  VERY_WET,
  WORKING_SAMPLE_G,
} from '@/lib/domain/moisture/oven-methods';
import type { CropFacts } from '@/lib/domain/reference/crop-facts';

/** Which oven method for this crop, line by line with how each is known. */
export function OvenAdviceList({ crop }: { crop: Pick<CropFacts, 'name' | 'scientificName' | 'family'> }) {
  const lines = linesFor(ovenMethodFor(crop));
  return (
    <section className="sheet grid gap-2" aria-label={`Oven method for ${crop.name}`}>
      <h3>The oven for {crop.name.toLowerCase()}</h3>
      <ul className="grid gap-2">
        {lines.map(({ words, line }) => (
          <li key={words}>
            {words}
            <span className="label block wrap-anywhere">
              {line.mark}: {line.source}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}

type Line = { words: string; line: OvenLine<unknown> };

function linesFor(advice: OvenAdvice): Line[] {
  const { heat, highAllowed, highHours, grinding, predryAbovePercent, grainStandard } = advice;
  const { from, to } = WORKING_SAMPLE_G.value;
  const lines: Line[] = [
    {
      words: `103 °C (${heat.value.temperatureFromC} to ${heat.value.temperatureToC}) for 17 hours (${heat.value.hoursFrom} to ${heat.value.hoursTo}), then ${COOLING_MINUTES.value} minutes in a desiccator before weighing.`,
      line: heat,
    },
    { words: HIGH_WORDS[highAllowed.value](highHours?.value ?? 0), line: highAllowed },
    { words: `Two samples of ${from} to ${to} g, drawn apart from each other.`, line: WORKING_SAMPLE_G },
  ];
  if (grinding !== null) {
    lines.push({ words: `Seed ${GRINDING_WORDS[grinding.value]}.`, line: grinding });
  }
  if (predryAbovePercent !== null) {
    lines.push({
      words: `Pre-dry before grinding when moister than ${predryAbovePercent.value} %.`,
      line: predryAbovePercent,
    });
  }
  const { abovePercent, temperatureC, hoursFrom, hoursTo } = VERY_WET.value;
  lines.push({
    words: `Seed of ${abovePercent} % and more: pre-dry at ${temperatureC} °C for ${hoursFrom} to ${hoursTo} hours.`,
    line: VERY_WET,
  });
  if (grainStandard !== null) {
    lines.push({
      words: `As grain, for comparison with a merchant’s figure: whole at ${grainStandard.value.temperatureC} °C for ${grainStandard.value.words}.`,
      line: grainStandard,
    });
  }
  return lines;
}

const HIGH_WORDS: Record<OvenAdvice['highAllowed']['value'], (hours: number) => string> = {
  yes: (hours) => `Or 130 to 133 °C for ${hours} ${hours === 1 ? 'hour' : 'hours'}.`,
  no: () => 'Not at 130 °C: this seed is held to the low temperature.',
  'no line known': () => 'No line for this crop could be recalled, so the low temperature, the gentler of the two.',
};
