/** Tests that stand in the incubators today, and two that were closed of late. */

export interface TrayStory {
  /** accession by name, its lot counted from the oldest */
  accession: string;
  lot: number;
  setDaysAgo: number;
  place: string;
  /** as the crop's method is printed; the first way of testing at it is taken */
  temperatures: string;
  /** left out: a test in groups, this being its first */
  dishes?: readonly [count: number, seedsEach: number];
  prechillDays?: number;
  preTreatment?: string;
  /** left out: as the method says */
  firstCountDays?: number;
  countEveryDays?: number;
  /** days after setting on which it was counted; all of its seed is classed on the last one of a closed test */
  countedOnDays: readonly number[];
  closed?: boolean;
  /** tray-wide, or of a dish */
  notes?: readonly { onDay: number; dish: number | null; text: string }[];
}

const WARM = 'incubator 1, upper shelf';
const CHANGING = 'incubator 2';
const COOL = 'cool cupboard';

/** The line up to which the test in groups is planned, and the seeds it may take in all. */
export const GROUPS = { line: 0.83, mostSeeds: 240 };

export const TRAY_STORIES: readonly TrayStory[] = [
  // Closed: hard seed, and a dish that stood in the draught.
  {
    accession: 'Lang Field',
    lot: 1,
    setDaysAgo: 26,
    place: WARM,
    temperatures: '20',
    dishes: [4, 50],
    countEveryDays: 3,
    countedOnDays: [4, 7, 10],
    closed: true,
    notes: [
      { onDay: 4, dish: 3, text: 'Stood by the door of the incubator. Cooler there than the others.' },
      { onDay: 10, dish: null, text: 'Three days over the last count: some seeds had only just swollen.' },
    ],
  },
  // The first group of a test in groups, closed, and the count is not clear yet.
  {
    accession: 'Black Sandwater',
    lot: 1,
    setDaysAgo: 15,
    place: WARM,
    temperatures: '20',
    prechillDays: 5,
    countedOnDays: [9, 12],
    closed: true,
  },
  // Late: nobody was here on the day of the first count.
  {
    accession: 'Northbie Winter',
    lot: 2,
    setDaysAgo: 8,
    place: WARM,
    temperatures: '20',
    dishes: [4, 50],
    countedOnDays: [],
  },
  // Its last count is today.
  {
    accession: 'Old Manse Bronze',
    lot: 1,
    setDaysAgo: 7,
    place: WARM,
    temperatures: '20',
    dishes: [4, 50],
    firstCountDays: 4,
    countedOnDays: [4],
    notes: [{ onDay: 4, dish: 2, text: 'A little mould at the rim; wiped, paper changed.' }],
  },
  // Counted once, due again today.
  {
    accession: 'Northbie Tall',
    lot: 2,
    setDaysAgo: 7,
    place: CHANGING,
    temperatures: '20-30',
    dishes: [4, 25],
    countEveryDays: 4,
    countedOnDays: [3],
  },
  // Its first count is today.
  {
    accession: 'Lambing',
    lot: 1,
    setDaysAgo: 3,
    place: CHANGING,
    temperatures: '20-30',
    dishes: [4, 50],
    countedOnDays: [],
  },
  // Counted twice, the next in two days.
  {
    accession: 'Boathouse',
    lot: 0,
    setDaysAgo: 9,
    place: CHANGING,
    temperatures: '20-30',
    dishes: [2, 25],
    preTreatment: 'soaked two hours',
    countEveryDays: 4,
    countedOnDays: [3, 7],
  },
  // Lies cold for its first days.
  {
    accession: 'Brannasay Black',
    lot: 0,
    setDaysAgo: 2,
    place: COOL,
    temperatures: '15',
    dishes: [4, 25],
    prechillDays: 5,
    countedOnDays: [],
  },
];
