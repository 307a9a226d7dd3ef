/** Who asked Brannasay for seed of late, and what the bank will not give away. */
import type { RecipientKind } from '../../lib/domain/stock/recipient-kinds';
import type { SharingTermsKey } from '../../lib/domain/stock/sharing-terms';

export const SHARING_STORIES: readonly { accession: string; sharing: SharingTermsKey; terms: string }[] = [
  {
    accession: "Keeper's Red",
    sharing: 'not',
    terms: 'the keeper of the light asked that it stay with the families of the Ness.',
  },
  {
    accession: 'Hallow Ness Long',
    sharing: 'with-terms',
    terms: 'Not for sale. A handful of seed comes back after the second harvest.',
  },
];

export interface RequestStory {
  recipient: string;
  recipientKind: RecipientKind;
  contact?: string;
  purpose: string;
  /** days before today */
  askedDaysAgo: number;
  /** left out: still open */
  sentDaysAgo?: number;
  /** accession by name, its lot counted from the oldest */
  lines: readonly { accession: string; lot: number; seeds: number; note?: string }[];
}

export const REQUEST_STORIES: readonly RequestStory[] = [
  {
    recipient: 'The growers’ circle',
    recipientKind: 'group',
    contact: 'by the notice board in the hall',
    purpose: 'Winter roots for six gardens',
    askedDaysAgo: 40,
    sentDaysAgo: 31,
    lines: [
      { accession: 'Hallow Ness Long', lot: 1, seeds: 120, note: 'the second lot of theirs grew well' },
      { accession: 'Sandwater Amber', lot: 1, seeds: 150 },
      { accession: 'Ramsgarth Grey', lot: 3, seeds: 60 },
    ],
  },
  {
    recipient: 'The school garden at Northbie',
    recipientKind: 'group',
    purpose: 'Kale and beans for the beds of the small ones',
    askedDaysAgo: 6,
    lines: [
      { accession: 'Northbie Tall', lot: 1, seeds: 50 },
      { accession: 'Lighthouse', lot: 2, seeds: 30 },
      { accession: 'Ebb Shore', lot: 1, seeds: 20, note: 'everybody asks for it' },
    ],
  },
];
