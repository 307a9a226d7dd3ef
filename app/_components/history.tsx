import { formatInstant } from '@/app/_format/figures';

interface Line {
  id: number;
  at: Date;
  byName: string;
  summary: string;
}

/** Who changed what and when, newest first. */
export function History({ lines }: { lines: Line[] }) {
  if (lines.length === 0) return null;
  return (
    <section className="grid gap-2" aria-labelledby="history">
      <h2 id="history">History</h2>
      <ul className="grid gap-2">
        {lines.map((line) => (
          <li key={line.id} className="wrap-anywhere">
            {line.summary}
            <span className="label block">
              {line.byName}, {formatInstant(line.at)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
