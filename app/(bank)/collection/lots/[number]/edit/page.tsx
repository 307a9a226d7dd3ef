import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { HiddenField, NumberField, TextAreaField, TextField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { PageHead } from '@/app/_components/page-head';
import { lotPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getLotForEdit } from '@/lib/server/queries/lots';
import { today } from '@/lib/server/today';
import { LotFields } from '../../_parts/lot-fields';
import { changeLot } from '../../actions';

export const metadata: Metadata = { title: 'Change a lot' };

interface Props {
  params: Promise<{ number: string }>;
}

export default async function EditLotPage({ params }: Props) {
  await requirePerson('volunteer');
  const lot = await getLotForEdit(readParameter((await params).number));
  if (!lot) notFound();
  return (
    <>
      <PageHead
        above={<Link href={lotPath(lot.number)}>{lot.accession.name}</Link>}
        title={
          <>
            Change lot <span className="figures font-normal">{lot.number}</span>
          </>
        }
        below="How many seeds there are is changed in the packet's ledger."
      />
      <Form action={changeLot} className="sheet grid max-w-3xl gap-5">
        <HiddenField name="id" value={lot.id} />
        <VersionField version={lot.version} />
        <div className="grid gap-5 sm:grid-cols-2">
          <LotFields today={today()} lot={lot} />
          <NumberField name="cleanWeightG" label="Clean weight" unit="g" optional defaultValue={lot.cleanWeightG} />
          <NumberField
            name="thousandSeedWeightG"
            label="1000 seeds weigh"
            unit="g"
            optional
            defaultValue={lot.thousandSeedWeightG}
          />
        </div>
        <TextField name="treatment" label="Treatment" optional defaultValue={lot.treatment} />
        {lot.treatment && <Cautions keys={['treated-seed']} />}
        <TextAreaField name="notes" label="Notes" optional defaultValue={lot.notes} />
        <div>
          <SubmitButton>Save</SubmitButton>
        </div>
      </Form>
    </>
  );
}
