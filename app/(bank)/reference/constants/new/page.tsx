import type { Metadata } from 'next';
import { NumberField, TextAreaField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { addConstants } from '../../actions';

export const metadata: Metadata = { title: 'Add longevity constants' };

export default async function NewConstantsPage() {
  await requirePerson('steward');
  return (
    <>
      <PageHead
        title="Longevity constants of the bank’s own"
        below="From a paper, or from a storage experiment. Afterwards choose them on a crop’s page."
      />
      <section className="sheet max-w-3xl">
        <Form action={addConstants} className="grid gap-5 sm:grid-cols-2">
          <TextField name="name" label="Name" hint="How this set is told from others." />
          <TextField name="species" label="Species" hint="Scientific name of the seed it was fitted to." />
          <NumberField name="KE" label="KE" hint="Published ones lie between 7 and 10." />
          <NumberField name="CW" label="CW" hint="Published ones lie between 3.4 and 6." />
          <NumberField name="CH" label="CH" hint="Without temperatures of your own: 0.0329, from memory." />
          <NumberField name="CQ" label="CQ" hint="Without temperatures of your own: 0.000478, from memory." />
          <NumberField name="moistureFromPercent" label="Fitted from moisture" unit="%" optional />
          <NumberField name="moistureToPercent" label="to moisture" unit="%" optional />
          <NumberField name="temperatureFromC" label="Fitted from temperature" unit="°C" optional />
          <NumberField name="temperatureToC" label="to temperature" unit="°C" optional />
          <NumberField
            name="lowMoistureLimitPercent"
            label="Low-moisture limit"
            hint="Below it drying no longer lengthens life. Left empty: moisture at 10.6 % relative humidity."
            unit="%"
            optional
          />
          <TextAreaField
            name="source"
            label="Source"
            hint="Author, year, page; or which experiment."
            className="sm:col-span-2"
          />
          <div className="sm:col-span-2">
            <SubmitButton>Add the constants</SubmitButton>
          </div>
        </Form>
      </section>
    </>
  );
}
