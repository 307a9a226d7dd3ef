import clsx from 'clsx';
import Link from 'next/link';

export interface Tab<Key extends string> {
  key: Key;
  href: string;
  label: string;
}

interface Props<Key extends string> {
  tabs: readonly Tab<Key>[];
  here: Key;
  /** what lies side by side, for those who cannot see it */
  called: string;
}

/** Lists that belong together, side by side; on a phone they go on in a second row. */
export function Tabs<Key extends string>({ tabs, here, called }: Props<Key>) {
  return (
    <nav aria-label={called} className="no-print flex flex-wrap border-b border-rule">
      {tabs.map((tab) => (
        <Link
          key={tab.key}
          href={tab.href}
          aria-current={tab.key === here ? 'page' : undefined}
          className={clsx(
            '-mb-px inline-flex min-h-11 items-center border-b-4 px-3 text-ink no-underline md:px-4',
            tab.key === here ? 'border-leaf font-semibold' : 'border-transparent hover:border-rule',
          )}
        >
          {tab.label}
        </Link>
      ))}
    </nav>
  );
}
