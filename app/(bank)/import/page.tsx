import type { Metadata } from 'next';
import Link from 'next/link';
import { SelectField } from '@/app/_components/form/fields';
import { FileField } from '@/app/_components/form/file-field';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { PageHead } from '@/app/_components/page-head';
import { formatCount, formatInstant } from '@/app/_format/figures';
import { IMPORT_KINDS } from '@/lib/schemas/import/fields';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findImports } from '@/lib/server/queries/imports';
import { chooseFile } from './actions';

export const metadata: Metadata = { title: 'Import a spreadsheet' };

export default async function ImportPage() {
  await requirePerson('steward');
  const imports = await findImports();
  return (
    <>
      <PageHead
        title="Import a spreadsheet"
        below="Save each sheet as CSV. Accessions first, then lots, then germination tests. You see every problem before anything is written."
      />
      <section className="sheet max-w-2xl">
        <Form action={chooseFile}>
          <SelectField
            name="kind"
            label="What the file holds"
            options={IMPORT_KINDS.map((kind) => ({ value: kind, label: kind }))}
          />
          <FileField
            name="file"
            label="The file"
            hint="CSV with comma, semicolon or tab; one heading row; up to 20 000 rows."
            accept=".csv,.tsv,.txt,text/csv,text/tab-separated-values,text/plain"
          />
          <div>
            <SubmitButton busy="Reading …">Read the file</SubmitButton>
          </div>
        </Form>
      </section>
      {imports.length > 0 && (
        <section className="grid gap-3">
          <h2>Earlier files</h2>
          <ul className="sheet grid gap-2">
            {imports.map((job) => (
              <li key={job.id}>
                <Link href={`/import/${job.id}`} className="text-leaf underline underline-offset-3">
                  {job.fileName}
                </Link>{' '}
                <span className="quiet">
                  {job.kind}, {formatCount(job.rows)} rows, {statusInWords(job.status)}, {formatInstant(job.createdAt)}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
    </>
  );
}

const statusInWords = (status: string) => (status === 'imported' ? 'imported' : 'not imported');
