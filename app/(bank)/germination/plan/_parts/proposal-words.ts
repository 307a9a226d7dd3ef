import { formatPercent } from '@/app/_format/figures';
import { benchMinutes } from '@/lib/domain/germination/plan/bench-minutes';
import { countsInTest } from '@/lib/domain/germination/plan/count-step';
import type { TestOption, TestProposal } from '@/lib/domain/germination/plan/propose-test';
import { dishesFor, GROUP_SEEDS } from '@/lib/domain/germination/plan/test-sizes';

/** '4 × 25 = 100 seeds'; 'in groups of 40, about 63 seeds'. */
export function optionInWords(option: TestOption): string {
  if (option.kind === 'fixed') return `${option.size.dishes} × ${option.size.seedsEach} = ${option.seeds} seeds`;
  return `in groups of ${GROUP_SEEDS}, about ${Math.round(option.outcome.expectedSeeds)} seeds`;
}

/** The same with how often it will be clear: '4 × 25 = 100 seeds, clear in 93 of 100'. */
export function optionWithChance(option: TestOption): string {
  const words = optionInWords(option);
  if (!option.outcome || option.kind === 'groups') return words;
  return `${words}, clear in ${inHundred(option.outcome.clear)} of 100`;
}

/** Minutes of work, a rough figure; null where nobody knows when it is counted. */
export function minutesOf(
  option: TestOption,
  method: { firstCountDays: number | null; finalCountDays: number | null } | null,
): number | null {
  const final = method?.finalCountDays ?? null;
  if (final === null) return null;
  const counts = countsInTest(Math.min(method?.firstCountDays ?? final, final), final);
  if (option.kind === 'fixed') return benchMinutes({ dishes: option.size.dishes, seeds: option.seeds, counts });
  const seeds = Math.round(option.outcome.expectedSeeds);
  return benchMinutes({ dishes: dishesFor(seeds).length, seeds, counts });
}

/** One plain sentence: why this test, and whether it will tell. */
export function whyThisTest(proposal: TestProposal): string {
  const { chosen, standing, firstTest, enough, seedsToSpare } = proposal;
  if (!chosen) return nothingToSpare(seedsToSpare);
  if (standing === null)
    return `No forecast for this lot, so nobody can say what is enough: the usual ${chosen.seeds} seeds, or what can be spared.`;
  if (chosen.kind === 'groups') {
    const { expectedSeeds, mostSeeds } = chosen.outcome;
    return `${inGroupsBecause(proposal)}: set ${GROUP_SEEDS} seeds at a time and stop as soon as the count is clear, after about ${Math.round(expectedSeeds)} seeds, ${mostSeeds} at most.`;
  }
  if (!enough) {
    const unclear = 100 - inHundred(chosen.outcome?.clear ?? 0);
    return `Not enough to be sure: of 100 such tests about ${unclear} would not be clear. Only ${seedsToSpare} seeds can be spared.`;
  }
  if (firstTest) return `Its first test: every later forecast rests on it, so ${chosen.seeds} seeds.`;
  if (standing === 'far-above')
    return `${chosen.seeds} seeds are enough: this lot is very likely far above its line${of(proposal)}.`;
  if (standing === 'far-below')
    return `${chosen.seeds} seeds are enough: this lot is very likely far below its line${of(proposal)}.`;
  return `${chosen.seeds} seeds are enough to tell on which side of its line${of(proposal)} it is, in ${inHundred(chosen.outcome?.clear ?? 0)} of 100 cases.`;
}

function inGroupsBecause(proposal: TestProposal): string {
  if (proposal.standing === 'near-line') return `Near its line${of(proposal)}, where a fixed test wastes seed`;
  if (proposal.standing === 'uncertain') return `It may be above its line${of(proposal)} or below it`;
  return `To tell on which side of its line${of(proposal)} it is`;
}

const of = ({ line }: TestProposal) => (line === null ? '' : ` of ${formatPercent(line)}`);

function nothingToSpare(seeds: number): string {
  const spare = seeds === 0 ? 'No seed' : seeds === 1 ? 'Only one seed' : `Only ${seeds} seeds`;
  return `${spare} can be spared, too few for a test. Regrow it rather than test it.`;
}

/** Never 100 for what is not quite sure. */
const inHundred = (chance: number) => (chance >= 0.9995 ? 100 : Math.min(99, Math.round(chance * 100)));
