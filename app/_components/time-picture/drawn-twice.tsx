import clsx from 'clsx';
import type { ReactNode } from 'react';

export interface DrawingSize {
  width: number;
  height: number;
  /** about how many moments are marked */
  ticks: number;
}

interface Props {
  phone: DrawingSize;
  laptop: DrawingSize;
  caption: ReactNode;
  captionClass?: string;
  children: (size: DrawingSize) => ReactNode;
}

/** A picture drawn twice, for narrow and for wide screens, so that its words keep their size on a phone. */
export function DrawnTwice({ phone, laptop, caption, captionClass, children }: Props) {
  return (
    <figure className="grid gap-1">
      <div className="sm:hidden">{children(phone)}</div>
      <div className="hidden sm:block">{children(laptop)}</div>
      <figcaption className={clsx('label', captionClass)}>{caption}</figcaption>
    </figure>
  );
}
