import { Tabs } from '@/app/_components/tabs';

const TABS = [
  { key: 'places', href: '/stores', label: 'Places' },
  { key: 'scan', href: '/stores/scan', label: 'Scan' },
  { key: 'ledger', href: '/stores/ledger', label: 'Ledger' },
  { key: 'stock-takes', href: '/stores/stock-takes', label: 'Stock-take' },
  { key: 'drying', href: '/stores/drying', label: 'Drying' },
  { key: 'sharing', href: '/stores/sharing', label: 'Sharing' },
  { key: 'labels', href: '/stores/labels', label: 'Labels' },
] as const;

/** What is done in the seed room, side by side. */
export function StoresTabs({ here }: { here: (typeof TABS)[number]['key'] }) {
  return <Tabs tabs={TABS} here={here} called="Work in the stores" />;
}
