import type { FormState } from '@/app/_actions/form-state';
import { formatCount } from '@/app/_format/figures';
import { conditionsOf, lotsOf } from '@/lib/domain/longevity/storage-experiment/storage-row';
import { decodeText } from '@/lib/domain/spreadsheet/decode-text';
import { whyNotText } from '@/lib/domain/spreadsheet/file-kind';
import { problemsInWords } from '@/lib/schemas/storage-experiment/experiment-input';
import { readExperiment } from '@/lib/schemas/storage-experiment/read-experiment';

/** Longest file that is put into the text box. */
const MOST_TEXT = 400_000;

/** Reads a table without saving it: the form then shows what was found, or what stands in the way. */
export function checkTable(table: unknown, kept: FormState): FormState {
  const state = { ...kept, formError: null, fieldErrors: {} };
  const isFilled = table instanceof Uint8Array || (typeof table === 'string' && table.trim() !== '');
  if (!isFilled) return { ...state, fieldErrors: { table: 'Paste the counts, or choose a file.' } };
  const read = readExperiment(table);
  if (!read.ok) return { ...state, fieldErrors: { table: problemsInWords(read.problems) } };
  const [lots, conditions] = [lotsOf(read.rows).length, conditionsOf(read.rows).length];
  const found = `All ${formatCount(read.rows.length)} counts can be read: ${counted(lots, 'lot')}, ${counted(conditions, 'condition')}. Nothing is saved yet.`;
  return { ...state, values: { ...state.values, checked: [found, ...read.notes].join('\n') } };
}

/** A chosen file as text, or null where it is none. */
export function textOfFile(bytes: Uint8Array): string | null {
  if (bytes.length > MOST_TEXT || whyNotText(bytes)) return null;
  const decoded = decodeText(bytes);
  return decoded.ok ? decoded.text : null;
}

const counted = (count: number, thing: string) => `${count} ${thing}${count === 1 ? '' : 's'}`;
