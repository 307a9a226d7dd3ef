/**
 * What is put into a container to take up the water that comes in or was left. None of these figures is a standard: how
 * long a desiccant lasts depends on how often the container is opened and how well it seals, so each interval is only
 * when to look at it next. Status of intervals: common practice. How to dry it again: from memory; its maker's sheet wins.
 */
import { addDays, type CalendarDate } from '../calendar/calendar-date';

export interface Desiccant {
  key: string;
  label: string;
  /** days after which it is looked at or changed, in a container that is opened now and then */
  changeAfterDays: number;
  /** how to tell that it is spent */
  spent: string;
  /** how to make it dry again */
  regenerate: string;
  /** keys of lib/domain/reference/cautions */
  cautions: readonly string[];
}

export const DESICCANTS = [
  {
    key: 'silica-gel-blue',
    label: 'silica gel, blue indicator',
    changeAfterDays: 365,
    spent: 'It turns pink.',
    regenerate: 'About 2 hours at 120 °C, until it is blue again. Hotter spoils the colour.',
    cautions: ['cobalt-silica-gel'],
  },
  {
    key: 'silica-gel-orange',
    label: 'silica gel, orange indicator',
    changeAfterDays: 365,
    spent: 'It turns green or colourless.',
    regenerate: 'About 2 hours at 110 °C, until its colour is back. Hotter spoils the dye.',
    cautions: [],
  },
  {
    key: 'silica-gel',
    label: 'silica gel without indicator',
    changeAfterDays: 180,
    spent: 'Nothing shows: weigh it, or change it by the calendar.',
    regenerate: 'About 3 hours at 120 to 150 °C, until its weight no longer falls.',
    cautions: [],
  },
  {
    key: 'molecular-sieve',
    label: 'molecular sieve',
    changeAfterDays: 365,
    spent: 'Nothing shows: weigh it, or change it by the calendar.',
    regenerate: 'About 3 hours at 250 °C or more; a kitchen oven may not be hot enough.',
    cautions: [],
  },
  {
    key: 'zeolite-beads',
    label: 'zeolite drying beads',
    changeAfterDays: 365,
    spent: 'Nothing shows: weigh them, or keep a humidity card beside them.',
    regenerate: 'About 2 hours at 250 °C; cool them in a closed tin.',
    cautions: [],
  },
  {
    key: 'dried-rice',
    label: 'oven-dried rice',
    changeAfterDays: 90,
    spent: 'Nothing shows. It holds little water: change it often.',
    regenerate: 'Spread it thinly, about 1 hour at 110 °C; cool it in a closed jar.',
    cautions: [],
  },
  {
    key: 'other',
    label: 'another desiccant',
    changeAfterDays: 180,
    spent: 'See its sheet.',
    regenerate: 'See its sheet.',
    cautions: [],
  },
] as const satisfies readonly Desiccant[];

export type DesiccantKey = (typeof DESICCANTS)[number]['key'];

/** The keys alone, for input rules and the database. */
export const DESICCANT_KEYS = DESICCANTS.map((desiccant) => desiccant.key) as [DesiccantKey, ...DesiccantKey[]];

/**
 * @param key  a desiccant's key
 * @returns the desiccant; null for a key that is not, or no longer, in the list
 * Checked in tests/domain/stock/desiccants.test.ts
 */
export function findDesiccant(key: string | null): Desiccant | null {
  return DESICCANTS.find((desiccant) => desiccant.key === key) ?? null;
}

/**
 * When to look at a desiccant next, where nobody said otherwise.
 *
 * @param key  a desiccant's key
 * @param on   the day on which it was put in
 * @returns the day; see the header for how little it is worth
 * @throws RangeError when there is no such desiccant, or the date does not exist
 * Checked in tests/domain/stock/desiccants.test.ts
 */
export function desiccantDueOn(key: DesiccantKey, on: CalendarDate): CalendarDate {
  const desiccant = findDesiccant(key);
  if (!desiccant) throw new RangeError(`desiccantDueOn: key must be one of ${DESICCANT_KEYS}, got ${key}`);
  return addDays(on, desiccant.changeAfterDays);
}
