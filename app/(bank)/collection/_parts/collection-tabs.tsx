import clsx from 'clsx';
import Link from 'next/link';

const TABS = [
  { key: 'accessions', href: '/collection', label: 'Accessions' },
  { key: 'lots', href: '/collection/lots', label: 'Lots' },
  { key: 'crops', href: '/collection/crops', label: 'Crops' },
] as const;

/** The three lists of the collection, side by side. */
export function CollectionTabs({ here }: { here: (typeof TABS)[number]['key'] }) {
  return (
    <nav aria-label="Lists of the collection" className="no-print flex border-b border-rule">
      {TABS.map((tab) => (
        <Link
          key={tab.key}
          href={tab.href}
          aria-current={tab.key === here ? 'page' : undefined}
          className={clsx(
            '-mb-px inline-flex min-h-11 items-center border-b-4 px-4 text-ink no-underline',
            tab.key === here ? 'border-leaf font-semibold' : 'border-transparent hover:border-rule',
          )}
        >
          {tab.label}
        </Link>
      ))}
    </nav>
  );
}
