/** The calculators of Reference, in the order in which seed passes them: one line here and a page of the same name. */
interface Calculator {
  /** its page: /reference/<slug> */
  slug: string;
  title: string;
  /** the question it answers, as someone would ask it */
  asks: string;
}

export const CALCULATORS: readonly Calculator[] = [
  {
    slug: 'germination-interval',
    title: 'How sure is a germination figure',
    asks: '45 of 50 seeds grew: what may the whole lot do?',
  },
  {
    slug: 'hard-and-dormant-seed',
    title: 'Hard and dormant seed',
    asks: '60 of 100 seeds grew and 30 stayed hard: how much of the lot is alive?',
  },
  {
    slug: 'seeds-to-test',
    title: 'Seeds to test',
    asks: 'How few seeds tell whether a lot is still above its line?',
  },
  {
    slug: 'germination-over-days',
    title: 'Germination over days',
    asks: 'Counts on several days: how fast, how evenly and how far did this seed germinate?',
  },
  {
    slug: 'storage-life',
    title: 'How long does seed keep',
    asks: 'At 15 °C and 9 % moisture, how many years from 95 % to 85 %? And what would be enough for twenty?',
  },
  {
    slug: 'seeds-to-sow',
    title: 'Seeds to sow',
    asks: 'I want 40 plants: how much of this lot do I sow?',
  },
  {
    slug: 'flowers-to-bag',
    title: 'Flowers to bag',
    asks: 'I want 1500 seeds from 20 plants: how many flowers do I bag?',
  },
  {
    slug: 'keeping-variety',
    title: 'Keeping variety',
    asks: 'How many plants keep what is rare in a variety, and what do many regrowings cost it?',
  },
  {
    slug: 'moisture-and-drying',
    title: 'Moisture and drying',
    asks: 'How moist is it, what will this air bring it to, and when is it dry enough?',
  },
  {
    slug: 'seed-weight',
    title: 'Seed weight and number',
    asks: 'What do a thousand seeds weigh, and how many are in this packet?',
  },
  {
    slug: 'storage-experiments',
    title: 'Storage experiments',
    asks: 'Seed kept in several ways and counted over time: what are this species’ own longevity constants?',
  },
];

export function calculator(slug: string): Calculator {
  const found = CALCULATORS.find((one) => one.slug === slug);
  if (!found) throw new RangeError(`calculator: no calculator is called ${slug}`);
  return found;
}
