import { HiddenField } from '@/app/_components/form/fields';
import { Form } from '@/app/_components/form/form';
import { SubmitButton } from '@/app/_components/form/submit-button';
import { ImportProgressBar } from '@/app/_components/import-progress-bar';
import { Notice } from '@/app/_components/notice';
import { TableHead } from '@/app/_components/table-head';
import { formatCount, formatInstant, formatTemperature } from '@/app/_format/figures';
import { readingImportPath } from '@/app/_format/readings-path';
import { delimiterName } from '@/lib/schemas/reading-import';
import type { ReadingImportDetail, ReadingPreview } from '@/lib/server/queries/reading-imports';
import { importLoggerFile } from '../actions';
import { instantInWords } from './instants';
import { LayoutForm } from './layout-form';
import { ReadingsPicture } from './readings-picture';
import { ReportPart } from './report-part';

interface Props {
  file: ReadingImportDetail;
  preview: ReadingPreview;
}

const percent = (humidity: number) => `${Math.round(humidity * 1000) / 10} %`;

/** A file that waits: how it is read, a picture of it, what would be added, and the button. */
export function CheckFile({ file, preview }: Props) {
  const { layout, headings, opening, notes, blockers, report, first, importedBefore } = preview;
  const howItIsRead = (
    <section className="grid gap-3" aria-labelledby="layout">
      <h2 id="layout">How the file is read</h2>
      <LayoutForm address={readingImportPath(file.storeId, file.id)} layout={layout} headings={headings} />
      <details>
        <summary className="cursor-pointer font-semibold">The first lines as they stand in the file</summary>
        <ol className="sheet figures mt-2 grid gap-1 overflow-x-auto text-sm">
          {opening.map(({ line, text }) => (
            <li key={line} className="whitespace-pre">
              <span className="quiet">{String(line).padStart(3)}</span> {text}
            </li>
          ))}
        </ol>
      </details>
    </section>
  );
  return (
    <>
      {importedBefore && (
        <Notice kind="note">
          This very file was imported on {formatInstant(importedBefore)}. Importing it again adds only what was taken
          back since.
        </Notice>
      )}
      {blockers.length > 0 ? (
        <Notice kind="caution">
          <ul className="grid gap-1">
            {blockers.map((blocker) => (
              <li key={blocker}>{blocker}</li>
            ))}
          </ul>
        </Notice>
      ) : (
        <section className="sheet">
          <Form action={importLoggerFile}>
            <HiddenField name="importId" value={file.id} />
            {Object.entries({ ...layout, delimiter: delimiterName(layout.delimiter) }).map(([name, value]) => (
              <HiddenField key={name} name={name} value={value ?? ''} />
            ))}
            <p>
              {report.added === 0
                ? 'Every reading of this file is there already: importing it changes nothing.'
                : `${formatCount(report.added)} readings are new to this store. All of them are added, or none.`}
            </p>
            <div className="flex flex-wrap items-center gap-4">
              <SubmitButton busy="Importing …">Import {formatCount(report.added)} readings</SubmitButton>
              <ImportProgressBar address={`/api/reading-imports/${file.id}`} />
            </div>
          </Form>
        </section>
      )}
      {blockers.length > 0 && howItIsRead}
      <section className="grid gap-4" aria-labelledby="understood">
        <h2 id="understood">As it was understood</h2>
        {notes.length > 0 && (
          <Notice kind="note">
            <ul className="grid gap-1">
              {notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
            </ul>
          </Notice>
        )}
        <div className="sheet grid gap-6">
          <ReadingsPicture
            title="Temperature, °C"
            points={preview.temperature}
            write={formatTemperature}
            tone="leaf"
            leastSpan={2}
          />
          <ReadingsPicture
            title="Relative humidity"
            points={preview.humidity}
            write={percent}
            tone="indigo"
            leastSpan={0.1}
          />
        </div>
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger">
            <TableHead columns={['line', 'instant, UTC', 'temperature', 'humidity']} words={['instant, UTC']} />
            <tbody>
              {first.map((reading) => (
                <tr key={reading.line}>
                  <td className="number">{reading.line}</td>
                  <td>{instantInWords(reading.at).replace(' UTC', '')}</td>
                  <td className="number">{formatTemperature(reading.temperatureC)}</td>
                  <td className="number">
                    {reading.relativeHumidity === null ? 'none' : percent(reading.relativeHumidity)}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      </section>
      {blockers.length === 0 && howItIsRead}
      <ReportPart report={report} imported={false} headings={headings} />
    </>
  );
}
