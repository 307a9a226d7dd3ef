import type { ReactNode } from 'react';
import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import type { NamedFormat } from '@/lib/domain/labels/common-formats';
import type { LabelText } from '@/lib/domain/labels/label-text';
import { PrintOptions } from './print-options';
import { runOfAddress } from './run-of-address';
import { RunPreview } from './run-preview';

interface Props {
  /** the page it stands on */
  path: string;
  address: Address;
  formats: readonly NamedFormat[];
  /** what stands on each label, at least one */
  texts: readonly LabelText[];
  maySetFormats: boolean;
  /** what is labelled, above the choice of paper */
  children: ReactNode;
}

/** Labels of what has been chosen: on what they are printed, and beside it the sheet as it will come out. */
export function PrintLabels({ path, address, formats, texts, maySetFormats, children }: Props) {
  const { question, asked } = runOfAddress(address, formats, texts.length);
  return (
    <div className="grid items-start gap-6 lg:grid-cols-2">
      <div className="grid min-w-0 gap-6">
        {children}
        <PrintOptions
          path={path}
          address={address}
          question={question}
          formats={formats}
          mayPrint
          maySetFormats={maySetFormats}
        />
      </div>
      <section className="grid min-w-0 gap-3" aria-labelledby="preview">
        <h2 id="preview">Preview</h2>
        {asked ? (
          <RunPreview path={path} address={address} run={{ ...asked, texts }} />
        ) : (
          <p>Put the marked fields right to see the labels.</p>
        )}
      </section>
    </div>
  );
}
