import type { Address } from '../../_parts/read-question';

/** What each part of the page is given: where its form leads, and what the address holds. */
export interface SectionProps {
  action: string;
  address: Address;
}
