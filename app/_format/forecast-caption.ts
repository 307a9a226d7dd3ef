import { formatPercentFigure } from './figures';

export interface CaptionFigures {
  viability: { median: number; lower: number; upper: number };
  chanceBelow: number;
  threshold: number;
  seedsLeft: number;
  plantsNeeded: number;
  cropName: string;
  nextSeason: number;
  rescue: boolean;
  /** null: beyond the horizon */
  lastSafeSeason: number | null;
  tests: number;
}

/** The forecast in plain words; what stands between ** is set in bold. */
export function forecastCaption(figures: CaptionFigures): string {
  return [aliveNow(figures), againstTheLine(figures), untilWhen(figures)].join(' ');
}

function aliveNow({ viability: { median, lower, upper }, tests }: CaptionFigures): string {
  const evidence = tests === 0 ? 'Nobody has tested this lot. By the equation alone, most likely' : 'Most likely';
  const [low, high] = [formatPercentFigure(lower), formatPercentFigure(upper)];
  return `${evidence} **${formatPercentFigure(median)} in 100 seeds are alive today**, and nine times in ten the truth lies between ${low} and ${high}.`;
}

function againstTheLine({ chanceBelow, threshold }: CaptionFigures): string {
  const line = `the line of ${formatPercentFigure(threshold)} %`;
  if (chanceBelow < 0.005) return `It is all but certain to be above ${line}.`;
  if (chanceBelow > 0.995) return `It is **all but certain to be below** ${line}.`;
  return `There is a **${Math.round(chanceBelow * 100)} % chance that it is already below** ${line}.`;
}

function untilWhen({ rescue, lastSafeSeason, plantsNeeded, cropName, seedsLeft, nextSeason }: CaptionFigures): string {
  if (seedsLeft === 0) return 'No seed of it is left.';
  const plants = `the ${plantsNeeded} plants that ${withArticle(cropName)} needs`;
  if (rescue)
    return `What is left can no longer be relied on to raise ${plants}: **sow it in ${nextSeason}, all of it if need be**.`;
  if (lastSafeSeason === null) return `What is left will raise ${plants} for generations to come.`;
  return `**${lastSafeSeason} is the last season** in which what is left will surely raise ${plants}.`;
}

function withArticle(cropName: string): string {
  const name = cropName.charAt(0).toLowerCase() + cropName.slice(1);
  return `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`;
}
