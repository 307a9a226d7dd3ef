'use client';

import clsx from 'clsx';
import {
  BookOpen,
  CalendarCheck,
  CircleUser,
  FlaskConical,
  Grid2x2Check,
  ScanLine,
  Settings,
  Snowflake,
  Sprout,
  Wheat,
} from 'lucide-react';
import Link from 'next/link';
import { usePathname } from 'next/navigation';

const PLACES = [
  { href: '/', label: 'Today', icon: CalendarCheck, count: 'today' },
  { href: '/collection', label: 'Collection', icon: Wheat },
  { href: '/germination', label: 'Germination', icon: FlaskConical, count: 'germination' },
  { href: '/stores', label: 'Stores', icon: Snowflake },
  { href: '/regrow', label: 'Regrow', icon: Sprout, count: 'regrow' },
] as const;
const BOOKS = [
  { href: '/reference', label: 'Reference', icon: BookOpen },
  { href: '/settings', label: 'Settings', icon: Settings },
] as const;
/** On a phone one touch away, on whatever page: labels are scanned standing before the freezer. */
const SCAN = { href: '/stores/scan', label: 'Scan a label', icon: ScanLine } as const;
/** So is the bench: whoever comes to count has wet hands. Its page is loaded whole, because it works without a connection. */
const BENCH = { href: '/bench', label: 'Count at the bench', icon: Grid2x2Check } as const;
const ACCOUNT = { href: '/settings/account', label: 'Your account', icon: CircleUser } as const;

export interface OpenWorkCounts {
  today: number;
  germination: number;
  regrow: number;
}

interface Props {
  counts: OpenWorkCounts | null;
  person: { name: string; role: string } | null;
  /** False where nobody signs in. */
  hasAccount: boolean;
  mayCount: boolean;
}

export function Navigation({ counts, person, hasAccount, mayCount }: Props) {
  const path = usePathname();
  const isHere = (href: string) => (href === '/' ? path === '/' : path === href || path.startsWith(`${href}/`));
  return (
    <>
      <nav
        aria-label="Places"
        className="sticky top-0 hidden h-dvh flex-col gap-0.5 border-r border-rule bg-sunk py-5 md:flex"
      >
        <Link href="/" className="px-5 pb-4 text-lg font-bold text-ink no-underline">
          Hilum
        </Link>
        {[...PLACES, ...BOOKS].map((place) => (
          <Link
            key={place.href}
            href={place.href}
            aria-current={isHere(place.href) ? 'page' : undefined}
            className={clsx(
              'flex min-h-11 items-center justify-between gap-2 border-l-4 px-4 text-ink no-underline hover:bg-sheet',
              isHere(place.href) ? 'border-leaf bg-sheet font-semibold' : 'border-transparent',
            )}
          >
            {place.label}
            <Count counts={counts} name={'count' in place ? place.count : undefined} />
          </Link>
        ))}
        {mayCount && (
          <a
            href={BENCH.href}
            className="mt-3 flex min-h-11 items-center gap-2 border-l-4 border-transparent px-4 text-ink no-underline hover:bg-sheet"
          >
            <BENCH.icon aria-hidden size={18} />
            Bench
          </a>
        )}
        {person && (
          <p className="mt-auto grid px-5 text-sm text-ink-2">
            {person.name}
            <span>{person.role}</span>
            {hasAccount && (
              <Link href="/settings/account" className="flex min-h-11 items-center text-ink underline">
                Your account
              </Link>
            )}
          </p>
        )}
      </nav>
      <header className="flex items-center justify-between border-b border-rule bg-sunk px-4 md:hidden print:hidden">
        <Link href="/" className="py-3 text-lg font-bold text-ink no-underline">
          Hilum
        </Link>
        <div className="flex">
          {mayCount && (
            <a href={BENCH.href} aria-label={BENCH.label} className="grid size-11 place-items-center text-ink">
              <BENCH.icon aria-hidden size={22} />
            </a>
          )}
          {[SCAN, ...BOOKS, ...(hasAccount ? [ACCOUNT] : [])].map(({ href, label, icon: Icon }) => (
            <Link
              key={href}
              href={href}
              aria-label={label}
              aria-current={isHere(href) ? 'page' : undefined}
              className={clsx('grid size-11 place-items-center text-ink', isHere(href) && 'border-b-4 border-leaf')}
            >
              <Icon aria-hidden size={22} />
            </Link>
          ))}
        </div>
      </header>
      <nav
        aria-label="Places"
        className="fixed inset-x-0 bottom-0 z-10 grid grid-cols-5 border-t border-rule bg-sunk pb-[env(safe-area-inset-bottom)] md:hidden"
      >
        {PLACES.map(({ href, label, icon: Icon, ...place }) => (
          <Link
            key={href}
            href={href}
            aria-current={isHere(href) ? 'page' : undefined}
            className={clsx(
              'relative grid min-h-14 content-center justify-items-center gap-0.5 border-t-4 text-[0.75rem] text-ink no-underline',
              isHere(href) ? 'border-leaf bg-sheet font-semibold' : 'border-transparent',
            )}
          >
            <Icon aria-hidden size={20} />
            {label}
            <span className="absolute top-0.5 right-2">
              <Count counts={counts} name={'count' in place ? place.count : undefined} />
            </span>
          </Link>
        ))}
      </nav>
    </>
  );
}

function Count({ counts, name }: { counts: OpenWorkCounts | null; name: keyof OpenWorkCounts | undefined }) {
  const value = name && counts ? counts[name] : 0;
  if (!value) return null;
  return (
    <span className="figures text-[0.8rem] font-normal text-ink-2">
      {value > 999 ? '999+' : value}
      <span className="sr-only"> waiting</span>
    </span>
  );
}
