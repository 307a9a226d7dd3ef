import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { HiddenField } from '@/app/_components/form/fields';
import { FileField } from '@/app/_components/form/file-field';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { EmptyState } from '@/app/_components/list/empty-state';
import { PageHead } from '@/app/_components/page-head';
import { readingsInWords } from '@/app/_format/climate';
import { storePath } from '@/app/_format/store-path';
import { MAX_LOGGER_FILE_BYTES } from '@/lib/schemas/reading-import';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findReadingImports, findReadingTokens } from '@/lib/server/queries/reading-imports';
import { getLastReadings, getStore } from '@/lib/server/queries/stores';
import { ImportList } from './_parts/import-list';
import { TokenPart } from './_parts/token-part';
import { chooseLoggerFile } from './actions';

export const metadata: Metadata = { title: 'Readings' };

export default async function ReadingsPage({ params }: { params: Promise<{ id: string }> }) {
  const person = await requirePerson('volunteer');
  const store = await getStore((await params).id);
  if (!store) notFound();
  const isSteward = mayActAs(person, 'steward');
  const [imports, tokens, readings] = await Promise.all([
    findReadingImports(store.id),
    isSteward ? findReadingTokens(store.id) : [],
    getLastReadings(store.id),
  ]);
  return (
    <>
      <PageHead
        above={<Link href={storePath(store.id)}>{store.name}</Link>}
        title="Readings"
        below={`Logged: ${readingsInWords(readings)}`}
      />
      <section className="sheet max-w-2xl">
        <Form action={chooseLoggerFile}>
          <HiddenField name="storeId" value={store.id} />
          <FileField
            name="file"
            label="A file from the logger"
            hint={`CSV or text as the logger writes it, up to ${MAX_LOGGER_FILE_BYTES / 1024 / 1024} MB. You see how it is read before anything is added.`}
            accept=".csv,.tsv,.txt,.log,text/csv,text/tab-separated-values,text/plain"
          />
          <div>
            <SubmitButton busy="Reading …">Read the file</SubmitButton>
          </div>
        </Form>
      </section>
      <section className="grid gap-3" aria-labelledby="imports">
        <h2 id="imports">Where its readings came from</h2>
        {imports.length === 0 ? (
          <EmptyState>
            <p>No file was read and no script has sent anything for this store yet.</p>
          </EmptyState>
        ) : (
          <ImportList storeId={store.id} imports={imports} />
        )}
      </section>
      {isSteward && <TokenPart storeId={store.id} tokens={tokens} />}
    </>
  );
}
