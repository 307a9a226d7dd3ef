import { LEVELS } from '@/lib/schemas/calculators/question-parts';

/** How sure, as a list to choose from: '95 in 100'. */
export const LEVEL_CHOICE = LEVELS.map((value) => ({ value, label: `${value} in 100` }));
