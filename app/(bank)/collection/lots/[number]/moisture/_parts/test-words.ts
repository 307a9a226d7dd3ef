import { formatDate, formatTemperature } from '@/app/_format/figures';
import { formatMoisture } from '@/app/_format/moisture';
import { AIR_METHOD_ERROR_POINTS, moistureMethod } from '@/lib/domain/moisture/moisture-methods';
import type { OvenDishes } from '@/lib/domain/moisture/oven-dishes';
import type { SealDoubt } from '@/lib/domain/moisture/seal-doubt';

interface Found {
  method: string;
  moisturePercent: number;
  relativeHumidity: number | null;
  temperatureC: number | null;
  oven: OvenDishes | null;
}

/** How far a result can be trusted, in a sentence: whether dishes agree, or what the way of finding it leaves open. */
export function trustInWords({ method, relativeHumidity, temperatureC, oven }: Found): string {
  if (oven) return dishesInWords(oven);
  if (method === 'air' && relativeHumidity !== null && temperatureC !== null) {
    const { rootMeanSquare, largest } = AIR_METHOD_ERROR_POINTS;
    return `Worked out from air of ${Math.round(relativeHumidity * 100)} % at ${formatTemperature(temperatureC)} by an equation that is from memory: about ${rootMeanSquare.toFixed(1)} points off on the whole, ${largest} at worst.`;
  }
  return `Give or take ${moistureMethod(method).standardPoints} points, if the meter is set for this crop.`;
}

/** 'Two dishes, 0.08 points apart of 0.2 permitted: they agree.' */
export function dishesInWords({ dishPercents, rangePoints, permittedPoints, verdict }: OvenDishes): string {
  const dishes = `${NUMBER_WORDS[dishPercents.length] ?? dishPercents.length} dishes, ${rangePoints.toFixed(2)} points apart of ${permittedPoints} permitted`;
  return verdict === 'agree'
    ? `${dishes}: they agree.`
    : `${dishes}: they do not agree. Weigh and dry new samples; until then their mean counts, trusted less.`;
}

const NUMBER_WORDS: Record<number, string> = { 2: 'Two', 3: 'Three', 4: 'Four', 5: 'Five', 6: 'Six' };

/** What a packet's latest test says against its seal, with the finding in ** **. */
export function doubtInWords(
  packetNumber: string,
  { before, beforePercent, test, differencePoints, permittedPoints, stayFrom }: SealDoubt,
): string {
  const was =
    before.kind === 'written'
      ? `was packed at ${formatMoisture(beforePercent)} on ${formatDate(stayFrom)}`
      : `was at ${formatMoisture(beforePercent)} until ${formatDate(before.testedOn)}`;
  const why =
    differencePoints > 0
      ? 'the seal may leak'
      : 'sealed seed cannot dry, so one of the two is wrong, or it was opened and dried';
  return `**${packetNumber} ${was}, and measured ${formatMoisture(test.moisturePercent)} on ${formatDate(test.testedOn)}: ${why}.** ${Math.abs(differencePoints).toFixed(1)} points apart; chance explains ${permittedPoints.toFixed(1)}. The forecast still reckons with ${formatMoisture(beforePercent)}.`;
}
