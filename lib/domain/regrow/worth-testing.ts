/** At this chance of being below the line a count tells nothing new. The bank's own choice. */
export const CHANCE_THAT_NEEDS_NO_TEST = 0.9;

/**
 * Whether a lot should stand in the list of tests to do. An empty lot can't be tested; a tested lot that is all but surely
 * below the line is to be regrown from or cleared out, and another count would only use up its seed. A lot that nobody
 * has tested is always worth it: until then its forecast is a guess. The bank's own choice.
 *
 * @param seedsLeft    whole seeds, >= 0
 * @param everTested   has at least one germination test
 * @param chanceBelow  of being below the threshold now, 0-1; null where there is no forecast
 * Checked in tests/domain/regrow/worth-testing.test.ts
 */
export function isWorthTesting({
  seedsLeft,
  everTested,
  chanceBelow,
}: {
  seedsLeft: number;
  everTested: boolean;
  chanceBelow: number | null;
}): boolean {
  if (seedsLeft === 0) return false;
  return !everTested || chanceBelow === null || chanceBelow < CHANCE_THAT_NEEDS_NO_TEST;
}
