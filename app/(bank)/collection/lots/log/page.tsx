import type { Metadata } from 'next';
import Link from 'next/link';
import { AccessionField } from '@/app/_components/accession-field';
import { Cautions } from '@/app/_components/cautions';
import { DateField, NumberField, TextAreaField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findStoreChoices } from '@/lib/server/queries/stores';
import { today } from '@/lib/server/today';
import { LotFields } from '../_parts/lot-fields';
import { PlacementFields } from '../_parts/placement-fields';
import { logLot } from '../actions';

export const metadata: Metadata = { title: 'Log a cleaned lot' };

interface Props {
  searchParams: Promise<{ accession?: string | string[] }>;
}

export default async function LogLotPage({ searchParams }: Props) {
  await requirePerson('volunteer');
  const [{ accession }, stores] = await Promise.all([searchParams, findStoreChoices()]);
  const day = today();
  return (
    <>
      <PageHead
        above={<Link href="/collection/lots">Lots</Link>}
        title="Log a cleaned lot"
        below="Cleaned seed of one accession, from one harvest, into its first packet."
      />
      {stores.length === 0 ? (
        <EmptyState>
          <p>There is no store yet to put seed in. Name the freezer, fridge or room first.</p>
          <Link href="/stores/new" className="button">
            Add a store
          </Link>
        </EmptyState>
      ) : (
        <Form action={logLot} className="sheet grid max-w-3xl gap-6">
          <fieldset className="grid gap-5 sm:grid-cols-2">
            <legend className="mb-3 text-lg font-semibold">The harvest</legend>
            <AccessionField
              name="accession"
              label="Accession"
              defaultValue={Array.isArray(accession) ? accession[0] : accession}
            />
            <TextField name="lotNumber" label="Lot number" hint="Empty: the next of the harvest year." optional />
            <LotFields today={day} />
          </fieldset>
          <fieldset className="grid gap-5 border-t border-rule pt-4 sm:grid-cols-3">
            <legend className="pr-3 text-lg font-semibold">How much</legend>
            <p className="label max-w-prose sm:col-span-full">
              Weigh the clean seed or count it. A weight becomes seeds through the thousand-seed weight; without one,
              the number is an estimate from what seed of the crop usually weighs.
            </p>
            <NumberField name="cleanWeightG" label="Clean weight" unit="g" optional />
            <NumberField name="thousandSeedWeightG" label="1000 seeds weigh" unit="g" optional />
            <NumberField whole name="seedCount" label="Seeds counted" optional />
          </fieldset>
          <fieldset className="grid gap-5 border-t border-rule pt-4 sm:grid-cols-2">
            <legend className="pr-3 text-lg font-semibold">Into store</legend>
            <PlacementFields stores={stores} />
            <DateField
              name="storedOn"
              label="Stored on"
              hint="The day it came to lie there."
              max={day}
              defaultValue={day}
            />
          </fieldset>
          <fieldset className="grid gap-5 border-t border-rule pt-4">
            <legend className="pr-3 text-lg font-semibold">Remarks</legend>
            <TextField
              name="treatment"
              label="Treatment"
              hint="Fungicide and the like, by name: treated seed is not food or feed."
              optional
            />
            <TextAreaField name="notes" label="Notes" optional />
          </fieldset>
          <Cautions keys={['freezing-moist-seed']} />
          <div>
            <SubmitButton>Store the lot</SubmitButton>
          </div>
        </Form>
      )}
    </>
  );
}
