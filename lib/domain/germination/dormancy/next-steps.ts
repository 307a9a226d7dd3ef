/*
 * What to do about seed that stayed hard or fresh at the end of a test, before it is believed alive or dead.
 */
import type { FactMark } from '../../reference/crop-facts';

export type DormantStep = 'scarify' | 'pre-chill' | 'own-treatment' | 'tetrazolium' | 'cut';

export interface NextStep {
  step: DormantStep;
  text: string;
  mark: FactMark;
  source: string;
}

const FEDERAL = 'US Federal Seed Act regulations (2015 edition, orientation only), 7 CFR';
const PRACTICE = 'Common practice at the bench';

/**
 * Steps for the hard and fresh seed of a finished test, the plainest first.
 *
 * 7 CFR 201.57a has dormancy shown by a cutting test, tetrazolium, scarification or chemicals; which of them, and in which
 * order, is common practice.
 *
 * @param left.hard, left.fresh  seeds of these classes, integers >= 0
 * @param left.preTreatment      what the crop's own method does before the test; null for nothing
 * @returns empty when no seed stayed hard or fresh
 * Checked in tests/domain/germination/dormancy/next-steps.test.ts
 */
export function dormantNextSteps({
  hard,
  fresh,
  preTreatment,
}: {
  hard: number;
  fresh: number;
  preTreatment: string | null;
}): NextStep[] {
  const steps: NextStep[] = [];
  if (hard > 0) {
    steps.push({
      step: 'scarify',
      text: 'Scarify the hard seed: nick or rub the coat opposite the scar, and set it again. What swells and grows was alive.',
      mark: 'published',
      source: `${FEDERAL} 201.57a (scarification); how it is done: common practice`,
    });
  }
  if (fresh > 0 && preTreatment !== null) {
    steps.push({
      step: 'own-treatment',
      text: `Set the fresh seed, or new seed, again as the method says: ${preTreatment}.`,
      mark: 'published',
      source: 'The crop’s own method, shown with its source where a test is set',
    });
  }
  if (fresh > 0) {
    steps.push({
      step: 'pre-chill',
      text: 'Pre-chill: keep it moist at 5–10 °C for about a week, then warm. Seed that was asleep comes up.',
      mark: 'common practice',
      source: PRACTICE,
    });
  }
  if (hard + fresh > 0) {
    steps.push(
      {
        step: 'tetrazolium',
        text: 'Or stain it with tetrazolium: in a day or two it shows which seed is alive. Wear gloves; it irritates.',
        mark: 'published',
        source: `${FEDERAL} 201.57a (tetrazolium); the caution: from memory`,
      },
      {
        step: 'cut',
        text: 'Or cut some open: firm, white and whole inside is likely alive, grey, soft or empty is dead. It is quick and rough.',
        mark: 'published',
        source: `${FEDERAL} 201.57a (cutting test); what to look for: common practice`,
      },
    );
  }
  return steps;
}
