import clsx from 'clsx';
import type { ReactNode } from 'react';

interface Props {
  /** names what scrolls, for who comes to it by keyboard */
  label: string;
  className?: string;
  children: ReactNode;
}

/** Holds a table wider than a phone: it scrolls sideways by itself, also by keyboard. */
export function ScrollBox({ label, className, children }: Props) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
    <section aria-label={label} tabIndex={0} className={clsx('overflow-x-auto', className)}>
      {children}
    </section>
  );
}
