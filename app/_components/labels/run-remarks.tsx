import { Notice } from '@/app/_components/notice';
import type { LabelPart } from '@/lib/domain/labels/label-text';
import type { RunRemarks } from '@/lib/server/labels/print-run';
import { refusalWords } from './refusal-words';

/** What will not stand on the labels as it should. */
export function RunRemarksList({ remarks, labels }: { remarks: RunRemarks; labels: number }) {
  if (remarks.refused) return <Notice kind="error">{refusalWords(remarks.refused)}</Notice>;
  const lines = [
    ...inWords(remarks.leftOut, labels, 'left out for want of room'),
    ...inWords(remarks.cut, labels, 'cut short'),
    ...(remarks.missing.length > 0
      ? [`Letters that the label fonts do not have are printed as ‘?’: ${remarks.missing.slice(0, 20).join(' ')}`]
      : []),
  ];
  if (lines.length === 0) return null;
  return (
    <Notice kind="note">
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </Notice>
  );
}

function inWords(counts: ReadonlyMap<LabelPart, number>, labels: number, what: string): string[] {
  return [...counts].map(
    ([part, count]) =>
      `${capital(part)}: ${what} on ${count === labels ? 'all labels' : count === 1 ? 'one label' : `${count} labels`}`,
  );
}

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
