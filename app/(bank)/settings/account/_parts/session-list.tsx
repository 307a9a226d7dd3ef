import type { ReactNode } from 'react';
import type { SessionRow } from '@/lib/server/queries/people';
import { deviceName } from './device-name';

interface Props {
  sessions: SessionRow[];
  /** The session of the page being looked at. */
  hereId?: string;
  /** What can be done with each. */
  children?: (session: SessionRow) => ReactNode;
}

const INSTANT = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

/** Where somebody is signed in. The address is what the device claimed. */
export function SessionList({ sessions, hereId, children }: Props) {
  if (sessions.length === 0) return <p>Not signed in anywhere.</p>;
  return (
    <ul className="grid gap-3">
      {sessions.map((session) => (
        <li key={session.id} className="flex flex-wrap items-center justify-between gap-3 border-t border-rule pt-3">
          <div className="min-w-0">
            <p className="font-semibold">
              {deviceName(session.userAgent)}
              {session.id === hereId && <span className="quiet font-normal"> (this one)</span>}
            </p>
            <p className="quiet text-sm">
              since <time dateTime={session.startedAt.toISOString()}>{INSTANT.format(session.startedAt)}</time>
              {session.address && <span className="figures"> · {session.address}</span>}
            </p>
          </div>
          {children?.(session)}
        </li>
      ))}
    </ul>
  );
}
