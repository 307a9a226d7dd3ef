import clsx from 'clsx';
import Link from 'next/link';
import { testPath } from '@/app/_format/links';

interface Props {
  trays: readonly { number: string; accessionName: string }[];
  colour: 'text-leaf' | 'text-ink';
  className: string;
}

/** Trays by number and variety, each leading to its test's page. */
export function TrayNames({ trays, colour, className }: Props) {
  return (
    <ul className={className}>
      {trays.map((tray) => (
        <li key={tray.number}>
          <Link
            href={testPath(tray.number)}
            prefetch={false}
            className={clsx('inline-flex min-h-11 items-center', colour, 'underline underline-offset-3')}
          >
            <span>
              <span className="figures">{tray.number}</span> {tray.accessionName}
            </span>
          </Link>
        </li>
      ))}
    </ul>
  );
}
