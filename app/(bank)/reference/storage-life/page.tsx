import type { Metadata } from 'next';
import { Notice } from '@/app/_components/notice';
import { storageLifeSchema } from '@/lib/schemas/calculators/storage-life';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findConstantsChoices } from '@/lib/server/queries/crops';
import { getStoreYear } from '@/lib/server/queries/store-year';
import { findCropsWithConstants, getStoredSeed } from '@/lib/server/queries/stored-seed';
import { findStoreChoices, getStore } from '@/lib/server/queries/stores';
import { CalculatorPage } from '../_parts/calculator-page';
import { type Address, readQuestion } from '../_parts/read-question';
import { Answer } from './_parts/answer';
import { askedStorage } from './_parts/asked-storage';
import { completeAddress, exampleFor, ownParameter } from './_parts/complete-address';
import { Gains } from './_parts/gains';
import { Goal } from './_parts/goal';
import { Grounds } from './_parts/grounds';
import { MapAndTable } from './_parts/map-and-table';
import { Method } from './_parts/method';
import { StorageForm } from './_parts/storage-form';
import { StoreYearNote } from './_parts/store-year-note';

const SLUG = 'storage-life';

export const metadata: Metadata = { title: 'How long does seed keep' };

export default async function StorageLifePage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const address = await searchParams;
  const [crops, constants, stores] = await Promise.all([
    findCropsWithConstants(),
    findConstantsChoices(),
    findStoreChoices(),
  ]);
  const example = exampleFor(crops);
  const crop = ownParameter(address, 'crop') ?? (ownParameter(address, 'constants') ? undefined : example.crop);
  const storeId = ownParameter(address, 'store');
  const [stored, store] = await Promise.all([
    getStoredSeed({ crop, constants: ownParameter(address, 'constants') }),
    storeId ? getStore(storeId) : null,
  ]);
  const question = readQuestion(storageLifeSchema, completeAddress(address, example, store, stored), example);
  const storeYear = store && stored && getStoreYear(store.id, stored.seed.constants);
  const askAt = (temperatureC: number) =>
    `/reference/${SLUG}?${new URLSearchParams({ ...question.typed, temperature: temperatureC.toFixed(1) })}`;
  const asked = question.input && stored && askedStorage(question.input, stored.seed);
  return (
    <CalculatorPage slug={SLUG}>
      <StorageForm action={`/reference/${SLUG}`} question={question} choices={{ crops, constants, stores }} />
      {question.input && !stored && (
        <Notice kind="note">No constants are chosen for this crop: choose those of a relative above.</Notice>
      )}
      {asked && !asked.ok && <Notice kind="caution">{asked.reason}</Notice>}
      {asked?.ok && stored && (
        <>
          <Answer stored={stored} asked={asked} />
          <MapAndTable stored={stored} asked={asked} store={store} />
          {store && storeYear && (
            <StoreYearNote name={store.name} year={storeYear} askHref={askAt(storeYear.temperatureC)} />
          )}
          <Goal stored={stored} asked={asked} />
          <Gains stored={stored} asked={asked} />
          <Grounds stored={stored} asked={asked} />
        </>
      )}
      <Method />
    </CalculatorPage>
  );
}
