import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { CheckField, HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { ImportProgressBar } from '@/app/_components/import-progress-bar';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { formatCount } from '@/app/_format/figures';
import { columnChoice } from '@/lib/schemas/import/column-choice';
import { AppError } from '@/lib/server/app-error';
import { requirePerson } from '@/lib/server/auth/require-person';
import { checkImport, getImport } from '@/lib/server/queries/imports';
import { ColumnsForm } from '../_parts/columns-form';
import { ProblemTable } from '../_parts/problem-table';
import { importFile } from '../actions';

export const metadata: Metadata = { title: 'Check the file' };

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

const NEXT_PLACE = {
  accessions: '/collection',
  lots: '/collection/lots',
  'germination tests': '/germination',
} as const;

export default async function CheckImportPage({ params, searchParams }: Props) {
  await requirePerson('steward');
  const [{ id }, query] = await Promise.all([params, searchParams]);
  const job = await getImport(id);
  if (!job) notFound();
  if (job.status === 'imported') {
    return (
      <>
        <PageHead title={job.fileName} below={`${formatCount(job.rows)} ${job.kind}`} />
        <Notice kind="done">Imported: all {formatCount(job.rows)} rows are in the collection.</Notice>
        <div className="flex flex-wrap gap-2">
          <Link href={NEXT_PLACE[job.kind]} className="button main">
            Look at them
          </Link>
          <Link href="/import" className="button">
            Import another file
          </Link>
        </div>
      </>
    );
  }
  const checked = await checkOrExplain(job.id, job.kind, query);
  if (checked instanceof AppError) {
    return (
      <>
        <PageHead title={job.fileName} />
        <Notice kind="error">{checked.userMessage}</Notice>
        <Link href="/import" className="button w-fit">
          Choose the file again
        </Link>
      </>
    );
  }
  const { dryRun, fields, header, mapping, sample } = checked;
  const { counts, problems, notes, newCrops, newStores } = dryRun;
  const ready = problems.length === 0 && counts.ready > 0;
  return (
    <>
      <PageHead
        above={`${job.kind}, ${formatCount(counts.rows)} rows`}
        title={job.fileName}
        below={
          ready
            ? `Every row can be imported: ${formatCount(counts.ready)} ${job.kind}.`
            : `${formatCount(counts.rowsWithProblems)} of ${formatCount(counts.rows)} rows have problems. Nothing has been written.`
        }
      />
      {problems.length > 0 && <ProblemTable problems={problems} />}
      {ready && (
        <section className="sheet max-w-3xl">
          <Form action={importFile}>
            <HiddenField name="importId" value={job.id} />
            {Object.entries(mapping).map(([key, column]) => (
              <HiddenField key={key} name={`columns.${key}`} value={column ?? ''} />
            ))}
            {newCrops.length + newStores.length > 0 && (
              <div className="grid gap-2">
                {newCrops.length > 0 && (
                  <p>
                    Crops that the collection does not know: <b>{newCrops.join(', ')}</b>. They come in without
                    constants, so without a forecast, until you fill them in.
                  </p>
                )}
                {newStores.length > 0 && (
                  <p>
                    Stores that it does not know: <b>{newStores.join(', ')}</b>. Their temperature is guessed from the
                    name; check them afterwards.
                  </p>
                )}
                <CheckField name="createNames" label="Create them" checkedByDefault />
              </div>
            )}
            <p className="quiet">All rows are imported, or none.</p>
            <div className="flex flex-wrap items-center gap-4">
              <SubmitButton busy="Importing …">
                Import {formatCount(counts.ready)} {job.kind}
              </SubmitButton>
              <ImportProgressBar address={`/api/imports/${job.id}`} />
            </div>
          </Form>
        </section>
      )}
      {notes.length > 0 && (
        <Notice kind="note">
          <p className="font-semibold">How the file was read</p>
          <ul className="list-disc pl-5">
            {notes.map((note) => (
              <li key={note}>{note}</li>
            ))}
          </ul>
        </Notice>
      )}
      <ColumnsForm
        importId={job.id}
        fields={fields}
        header={header}
        mapping={mapping}
        sample={sample.map((row) => row.cells)}
      />
    </>
  );
}

/** The dry run, or what keeps the file from being read. */
async function checkOrExplain(
  id: string,
  kind: Parameters<typeof checkImport>[1],
  query: Parameters<typeof columnChoice>[0],
) {
  try {
    return await checkImport(id, kind, columnChoice(query));
  } catch (error) {
    if (error instanceof AppError) return error;
    throw error;
  }
}
