import type { Metadata } from 'next';
import { redirect } from 'next/navigation';
import { LABELS_PATH, labelsHref, readLabelsAddress } from '@/app/_components/labels/labels-address';
import { PrintOptions } from '@/app/_components/labels/print-options';
import { runOfAddress } from '@/app/_components/labels/run-of-address';
import { RunPreview } from '@/app/_components/labels/run-preview';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import { packetLabel } from '@/lib/domain/labels/packet-label';
import { MOST_LIST_LENGTH, writePacketList } from '@/lib/domain/labels/packet-list';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import type { LabelRun } from '@/lib/server/labels/print-run';
import { getBank } from '@/lib/server/queries/bank';
import { findFormats } from '@/lib/server/queries/label-formats';
import { findLabelledPackets, findPacketNumbersToLabel, findPacketsToLabel } from '@/lib/server/queries/packet-labels';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { StoresTabs } from '../_parts/stores-tabs';
import { BagLabels } from './_parts/bag-labels';
import { ChosenPackets } from './_parts/chosen-packets';
import { FindPackets } from './_parts/find-packets';
import { TooManyPackets } from './_parts/too-many-packets';

export const metadata: Metadata = { title: 'Labels' };

interface Props {
  searchParams: Promise<Address>;
}

export default async function LabelsPage({ searchParams }: Props) {
  const person = await requirePerson('volunteer');
  const address = await searchParams;
  const wanted = readLabelsAddress(address);
  if (wanted.request !== '') return <BagLabels address={address} maySetFormats={mayActAs(person, 'steward')} />;
  if (wanted.adding === 'ticked') redirect(labelsHref(address, { page: wanted.page }));
  const added = wanted.adding === 'all' ? await findPacketNumbersToLabel(wanted) : [];
  const numbers = [...new Set([...wanted.packets, ...added])];
  const isTooLong = writePacketList(numbers).length > MOST_LIST_LENGTH;
  if (wanted.adding === 'all' && !isTooLong) redirect(labelsHref(address, { packets: numbers }));
  const [found, stores, formats, packets, bank] = await Promise.all([
    findPacketsToLabel(wanted, wanted.page),
    findStoreChoices(),
    findFormats(),
    findLabelledPackets(wanted.packets),
    getBank(),
  ]);
  const { question, asked } = runOfAddress(address, formats, packets.length);
  const texts = packets.map((packet) => packetLabel(packet, bank.address));
  const run: LabelRun | null = asked && { ...asked, texts };
  const chosen = new Set(packets.map((packet) => packet.packetNumber));
  const find = <FindPackets address={address} found={found} stores={stores} chosen={chosen} />;
  return (
    <>
      <PageHead title="Labels" below="Choose packets, see the sheet as it will be printed, make a PDF." />
      <StoresTabs here="labels" />
      {isTooLong && <TooManyPackets asked={numbers.length} />}
      <div className="grid items-start gap-6 lg:grid-cols-2">
        <div className="grid min-w-0 gap-6">
          {packets.length > 0 && <ChosenPackets address={address} packets={packets} />}
          {packets.length === 0 && find}
          <PrintOptions
            path={LABELS_PATH}
            address={address}
            question={question}
            formats={formats}
            mayPrint={packets.length > 0}
            maySetFormats={mayActAs(person, 'steward')}
          />
          {packets.length > 0 && find}
        </div>
        <section className="grid min-w-0 gap-3" aria-labelledby="preview">
          <h2 id="preview">Preview</h2>
          {packets.length === 0 ? (
            <EmptyState>
              <p>Tick packets and add them: their labels are shown here before anything is printed.</p>
            </EmptyState>
          ) : run ? (
            <RunPreview path={LABELS_PATH} address={address} run={run} />
          ) : (
            <p>Put the marked fields right to see the labels.</p>
          )}
        </section>
      </div>
    </>
  );
}
