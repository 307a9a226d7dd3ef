import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { labelsPerPage } from '@/lib/domain/labels/label-format';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findOwnFormats } from '@/lib/server/queries/label-formats';

export const metadata: Metadata = { title: 'Label sizes' };

export default async function LabelFormatsPage() {
  await requirePerson('steward');
  const own = await findOwnFormats();
  return (
    <>
      <PageHead
        above={<Link href="/stores/labels">Labels</Link>}
        title="Label sizes"
        below="Sheets and rolls of your own, when none of the common sizes fits."
      >
        <Link href="/stores/labels/formats/new" className="button main">
          Add a size
        </Link>
      </PageHead>
      <section className="grid gap-3" aria-labelledby="own">
        <h2 id="own">Of this bank</h2>
        {own.length === 0 ? (
          <EmptyState>
            <p>None yet. Measure one sheet with a ruler and add it.</p>
          </EmptyState>
        ) : (
          <ul className="sheet divide-y divide-rule">
            {own.map((format) => (
              <li key={format.id} className="flex min-h-11 flex-wrap items-center justify-between gap-3">
                <span>
                  <span className="font-semibold">{format.name}</span>{' '}
                  <span className="quiet">
                    {format.labelWidthMm} × {format.labelHeightMm} mm,{' '}
                    {format.kind === 'roll' ? 'roll' : `${labelsPerPage(format)} on a sheet`}
                  </span>
                </span>
                <Link
                  href={`/stores/labels/formats/${format.id}`}
                  className="inline-flex min-h-11 items-center"
                  prefetch={false}
                >
                  change<span className="sr-only"> {format.name}</span>
                </Link>
              </li>
            ))}
          </ul>
        )}
      </section>
      <section className="grid gap-3" aria-labelledby="common">
        <h2 id="common">Common sizes</h2>
        <ul className="sheet divide-y divide-rule">
          {COMMON_FORMATS.map((format) => (
            <li key={format.key} className="flex min-h-11 items-center">
              {format.name}
            </li>
          ))}
        </ul>
        <p className="label">
          Common practice: sizes as packs of labels state them. Margins are worked out for labels in the middle of the
          sheet; print one sheet on plain paper first.
        </p>
      </section>
    </>
  );
}
