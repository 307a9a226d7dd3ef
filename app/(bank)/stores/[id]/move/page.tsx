import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Cautions } from '@/app/_components/cautions';
import { CheckField, DateField, HiddenField, SelectField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { VersionField } from '@/app/_components/form/version-field';
import { PageHead } from '@/app/_components/page-head';
import { storePath } from '@/app/_format/store-path';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findPlacesFor, getStore } from '@/lib/server/queries/stores';
import { today } from '@/lib/server/today';
import { standElsewhere } from '../../actions';

export const metadata: Metadata = { title: 'Move a store' };

interface Props {
  params: Promise<{ id: string }>;
}

export default async function MoveStorePage({ params }: Props) {
  await requirePerson('volunteer');
  const store = await getStore((await params).id);
  if (!store) notFound();
  const places = await findPlacesFor(store.id);
  return (
    <>
      <PageHead
        above={<Link href={storePath(store.id)}>{store.name}</Link>}
        title={`Move ${store.name}`}
        below={`Everything in it goes along: ${store.packetsInside === 1 ? '1 packet' : `${store.packetsInside} packets`}. From that day on its seed ages as the new place is.`}
      />
      <Form action={standElsewhere} className="sheet grid max-w-2xl gap-5">
        <HiddenField name="id" value={store.id} />
        <VersionField version={store.version} />
        <SelectField
          name="parentId"
          label="Stands in"
          hint={store.parent ? `Now in ${store.parent.name}.` : 'Now by itself.'}
          optional
          empty="by itself"
          options={places.map((place) => ({ value: place.id, label: place.name }))}
          defaultValue={store.parentId}
        />
        <DateField name="from" label="Since" optional hint="Left empty: today." max={today()} />
        <CheckField
          name="correction"
          label="It never stood where it was said to stand"
          hint="What was written is corrected, instead of a move being added."
        />
        <CheckField name="moveAnyway" label="Move it in spite of a warning" />
        <div>
          <SubmitButton>Move it</SubmitButton>
        </div>
      </Form>
      <Cautions keys={['warm-before-opening', 'freezing-moist-seed']} />
    </>
  );
}
