import { formatDate } from '@/app/_format/figures';

const DATE_OR_NUMBER = /(\d{4}-\d{2}-\d{2}|[\p{L}\d]+(?:-[\p{L}\d]+)*-\d+)/u;
const DATE = /^\d{4}-\d{2}-\d{2}$/;

/** A computed sentence for reading: its dates as people say them, and no line broken inside a date or a lot number. */
export function Sentence({ text }: { text: string }) {
  return text.split(DATE_OR_NUMBER).map((part, index) =>
    index % 2 === 1 ? (
      <span key={`${part} ${text.indexOf(part)}`} className="whitespace-nowrap">
        {DATE.test(part) ? formatDate(part) : part}
      </span>
    ) : (
      part
    ),
  );
}
