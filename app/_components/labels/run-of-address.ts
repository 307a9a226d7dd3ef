import { type Address, type Question, readQuestion } from '@/app/(bank)/reference/_parts/read-question';
import type { NamedFormat } from '@/lib/domain/labels/common-formats';
import { labelsPerPage } from '@/lib/domain/labels/label-format';
import type { PrintRun } from '@/lib/domain/labels/layout-pages';
import { type PrintRunQuery, printRunQuery, USUAL_RUN } from '@/lib/schemas/label-run';
import { MOST_LABELS } from '@/lib/server/labels/print-run';

export interface AskedRun {
  question: Question<PrintRunQuery>;
  /** null when a field is wrong */
  asked: { format: NamedFormat; run: PrintRun } | null;
}

/**
 * How labels are to be printed, as an address says it; fields that it leaves out are as usual.
 *
 * @param labelled  how many packets or bags are to be labelled
 * Checked in tests/app/run-of-address.test.ts
 */
export function runOfAddress(address: Address, formats: readonly NamedFormat[], labelled: number): AskedRun {
  const question = readQuestion(printRunQuery, { ...USUAL_RUN, ...address }, {});
  const { input, errors } = question;
  const format = formats.find(({ key }) => key === question.typed.format);
  if (!format) errors.format ??= 'These labels are no longer there: choose others.';
  if (!input || !format) return { question: { ...question, input: null }, asked: null };
  const perPage = labelsPerPage(format);
  if (input.start > perPage) {
    errors.start =
      perPage === 1 ? 'A roll begins at label 1.' : `This sheet has ${perPage} labels: write 1 to ${perPage}.`;
  }
  if (labelled * input.copies > MOST_LABELS) {
    errors.copies = `That would be ${labelled * input.copies} labels. Print at most ${MOST_LABELS} at a time.`;
  }
  if (errors.start || errors.copies) return { question, asked: null };
  return {
    question,
    asked: {
      format: { ...format, code: input.code ?? format.code },
      run: { start: input.start, copies: input.copies, shiftXMm: input.shiftX, shiftYMm: input.shiftY },
    },
  };
}
