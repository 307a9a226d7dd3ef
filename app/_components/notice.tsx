import clsx from 'clsx';
import { CircleAlert, Info, TriangleAlert } from 'lucide-react';
import type { ReactNode } from 'react';

const KINDS = {
  error: { icon: CircleAlert, className: 'border-madder bg-madder-soft', role: 'alert' },
  caution: { icon: TriangleAlert, className: 'border-ochre bg-ochre-soft', role: undefined },
  note: { icon: Info, className: 'border-indigo bg-indigo-soft', role: undefined },
  done: { icon: Info, className: 'border-leaf bg-leaf-soft', role: 'status' },
} as const;

/** A message in a box: an error, a caution, a note, or word that something was done. */
export function Notice({ kind, children }: { kind: keyof typeof KINDS; children: ReactNode }) {
  const { icon: Icon, className, role } = KINDS[kind];
  return (
    <div
      role={role}
      tabIndex={role === 'alert' ? -1 : undefined}
      className={clsx('flex gap-3 rounded-paper border-l-4 p-3', className)}
    >
      <Icon aria-hidden size={20} className="mt-0.5 shrink-0" />
      <div className="min-w-0">{children}</div>
    </div>
  );
}
