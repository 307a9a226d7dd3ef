import Link from 'next/link';
import { AskChoice, AskNumber } from '@/app/(bank)/reference/_parts/question-fields';
import type { Address, Question } from '@/app/(bank)/reference/_parts/read-question';
import type { NamedFormat } from '@/lib/domain/labels/common-formats';
import { CODE_KINDS } from '@/lib/domain/labels/label-format';
import type { PrintRunQuery } from '@/lib/schemas/label-run';
import { KeptFields } from './kept-fields';

interface Props {
  /** the page it stands on */
  path: string;
  address: Address;
  question: Question<PrintRunQuery>;
  formats: readonly NamedFormat[];
  mayPrint: boolean;
  maySetFormats: boolean;
}

/** What labels are printed on. Both buttons take what stands in the fields now. */
export function PrintOptions({ path, address, question, formats, mayPrint, maySetFormats }: Props) {
  return (
    <form action={path} className="sheet grid gap-4" key={JSON.stringify(question.typed)}>
      <h2>Print on</h2>
      <KeptFields address={address} except={question.fields} />
      <AskChoice
        question={question}
        name="format"
        label="Labels"
        options={formats.map(({ key, name }) => ({ value: key, label: name }))}
      />
      <div className="grid grid-cols-2 gap-4">
        <AskNumber question={question} name="start" label="Begin at label" hint="Of a used sheet, row by row." whole />
        <AskNumber question={question} name="copies" label="Copies" hint="Of each label." whole />
      </div>
      <AskChoice
        question={question}
        name="code"
        label="Code"
        hint="Every phone reads QR codes. A Data Matrix leaves more room for words."
        options={CODE_KINDS.map(({ key, label }) => ({ value: key, label }))}
        empty="as the labels are set"
      />
      <details open={question.errors.shiftX || question.errors.shiftY ? true : undefined}>
        <summary className="cursor-pointer py-2.5 font-semibold">The printer prints shifted</summary>
        <p className="label mb-2">
          Print one sheet on plain paper at 100 %, hold it against the labels, and write how far everything must move.
        </p>
        <div className="grid grid-cols-2 gap-4">
          <AskNumber question={question} name="shiftX" label="To the right" hint="− to the left." unit="mm" />
          <AskNumber question={question} name="shiftY" label="Down" hint="− up." unit="mm" />
        </div>
      </details>
      <div className="flex flex-wrap gap-2">
        <button type="submit" className="button">
          Show
        </button>
        {mayPrint && (
          <button type="submit" className="button main" formAction="/api/labels" formTarget="_blank">
            Make PDF
          </button>
        )}
      </div>
      <p className="label">
        Print at 100 % (‘actual size’), not ‘fit to page’.
        {maySetFormats && (
          <>
            {' '}
            <Link href="/stores/labels/formats" prefetch={false}>
              Labels of another size
            </Link>
          </>
        )}
      </p>
    </form>
  );
}
