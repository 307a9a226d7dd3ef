import type { Address } from './read-question';

/** What a section of a page is given that reads its own question: where its form leads, and what the address holds. */
export interface SectionProps {
  action: string;
  address: Address;
}
