import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { labelsHref, readLabelsAddress, TRAY_LABELS_PATH } from '@/app/_components/labels/labels-address';
import { PrintLabels } from '@/app/_components/labels/print-labels';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import { trayLabel } from '@/lib/domain/labels/tray-label';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getBank } from '@/lib/server/queries/bank';
import { findFormats } from '@/lib/server/queries/label-formats';
import { findLabelledDishes } from '@/lib/server/queries/tray-labels';
import { findTraysUnderWay } from '@/lib/server/queries/trays-under-way';
import { ChooseTrays } from './_parts/choose-trays';
import { ChosenTrays } from './_parts/chosen-trays';

export const metadata: Metadata = { title: 'Labels of trays' };

interface Props {
  searchParams: Promise<Address>;
}

/** Labels for the dishes of germination tests. */
export default async function TrayLabelsPage({ searchParams }: Props) {
  const person = await requirePerson('volunteer');
  const address = await searchParams;
  const { trays } = readLabelsAddress(address);
  // Ticked one by one they come as several parameters: one list is a shorter address, and can be passed on.
  if (Array.isArray(address.trays)) redirect(labelsHref(address, {}, TRAY_LABELS_PATH));
  const dishes = findLabelledDishes(trays);
  const [formats, bank] = await Promise.all([findFormats(), getBank()]);
  const unknown = trays.filter((number) => !dishes.some(({ trayNumber }) => trayNumber === number));
  return (
    <>
      <PageHead
        above={<Link href="/germination">Germination</Link>}
        title="Labels of trays"
        below="One label for each dish. Its code opens the tray at the bench."
      />
      {unknown.length > 0 && (
        <Notice kind="caution">
          {unknown.join(', ')}:{' '}
          {unknown.length === 1 ? 'there is no tray of this number' : 'there are no trays of these numbers'}, so no
          label is made.
        </Notice>
      )}
      {dishes.length === 0 ? (
        <ChooseTrays address={address} trays={findTraysUnderWay()} />
      ) : (
        <PrintLabels
          path={TRAY_LABELS_PATH}
          address={address}
          formats={formats}
          texts={dishes.map((dish) => trayLabel(dish, bank.address))}
          maySetFormats={mayActAs(person, 'steward')}
        >
          <ChosenTrays address={address} dishes={dishes} />
        </PrintLabels>
      )}
    </>
  );
}
