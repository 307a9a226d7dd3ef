import { Tabs } from '@/app/_components/tabs';

const TABS = [
  { key: 'accessions', href: '/collection', label: 'Accessions' },
  { key: 'lots', href: '/collection/lots', label: 'Lots' },
  { key: 'crops', href: '/collection/crops', label: 'Crops' },
] as const;

/** The three lists of the collection, side by side. */
export function CollectionTabs({ here }: { here: (typeof TABS)[number]['key'] }) {
  return <Tabs tabs={TABS} here={here} called="Lists of the collection" />;
}
