import type { ReactNode } from 'react';

/** Named facts of one thing, in a strip of a few or a list of many. Empty ones are left out. */
export function Facts({ facts }: { facts: readonly (readonly [string, ReactNode])[] }) {
  const known = facts.filter(([, value]) => value !== null && value !== undefined && value !== '');
  return (
    <dl className="sheet grid grid-cols-2 gap-x-6 gap-y-4 sm:grid-cols-3 lg:grid-cols-4">
      {known.map(([name, value]) => (
        <div key={name} className="min-w-0">
          <dt className="label">{name}</dt>
          <dd className="wrap-anywhere font-semibold">{value}</dd>
        </div>
      ))}
    </dl>
  );
}
