import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatCount, formatInstant } from '@/app/_format/figures';
import { readingsPath } from '@/app/_format/readings-path';
import { storePath } from '@/app/_format/store-path';
import { AppError } from '@/lib/server/app-error';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getReadingImport, previewReadings, type ReadingImportDetail } from '@/lib/server/queries/reading-imports';
import { getStore } from '@/lib/server/queries/stores';
import { CheckFile } from '../_parts/check-file';
import { ReportPart } from '../_parts/report-part';
import { takeImportBack } from '../actions';

export const metadata: Metadata = { title: 'A file of readings' };

interface Props {
  params: Promise<{ id: string; importId: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function ReadingImportPage({ params, searchParams }: Props) {
  const person = await requirePerson('volunteer');
  const [{ id, importId }, query] = await Promise.all([params, searchParams]);
  const [store, file] = await Promise.all([getStore(id), getReadingImport(id, Number(importId))]);
  if (!store || !file) notFound();
  const above = (
    <>
      <Link href={storePath(store.id)}>{store.name}</Link>
      {' › '}
      <Link href={readingsPath(store.id)}>Readings</Link>
    </>
  );
  if (file.status === 'uploaded') {
    const preview = await previewOrExplain(file, query);
    return (
      <>
        <PageHead above={above} title={file.name} below="Nothing has been added yet." />
        {preview instanceof AppError ? (
          <>
            <Notice kind="error">{preview.userMessage}</Notice>
            <Link href={readingsPath(store.id)} className="button w-fit">
              Choose the file again
            </Link>
          </>
        ) : (
          <CheckFile file={file} preview={preview} />
        )}
      </>
    );
  }
  return (
    <>
      <PageHead
        above={above}
        title={file.name}
        below={`${file.kind === 'script' ? 'Sent by a script' : 'Imported'}, ${formatInstant(file.finishedAt ?? file.createdAt)}`}
      >
        <Link href={`${storePath(store.id)}/climate`} className="button main">
          Climate of the store
        </Link>
      </PageHead>
      <Outcome file={file} />
      {file.report && <ReportPart report={file.report} imported />}
      {file.status === 'imported' && file.added > 0 && mayActAs(person, 'steward') && (
        <section className="sheet grid max-w-2xl gap-3" aria-labelledby="take-back">
          <h2 id="take-back">Were they wrong?</h2>
          <p>
            Readings of another store, or of a logger that lay elsewhere, can be taken back: all{' '}
            {formatCount(file.added)} of them. They stay in the database, marked, and nothing is reckoned with them any
            more.
          </p>
          <Form action={takeImportBack}>
            <HiddenField name="importId" value={file.id} />
            <div>
              <SubmitButton quiet busy="Taking back …">
                Take these readings back
              </SubmitButton>
            </div>
          </Form>
        </section>
      )}
    </>
  );
}

function Outcome({ file }: { file: ReadingImportDetail }) {
  if (file.status === 'taken-back') {
    return <Notice kind="caution">These readings were taken back: nothing is reckoned with them.</Notice>;
  }
  return (
    <Notice kind="done">
      {file.added === 0
        ? 'Every reading of this file was there already. Nothing was changed.'
        : `${formatCount(file.added)} readings were added. The lots that lie or lay here have been judged with them.`}
    </Notice>
  );
}

async function previewOrExplain(file: ReadingImportDetail, query: Parameters<typeof previewReadings>[1]) {
  try {
    return await previewReadings(file, query);
  } catch (error) {
    if (error instanceof AppError) return error;
    throw error;
  }
}
