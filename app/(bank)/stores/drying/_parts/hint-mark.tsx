import type { StopHint } from './stop-hint';

const MARKS: Record<StopHint['kind'], { className: string; shape: React.ReactNode }> = {
  stop: { className: 'mark-leave', shape: <rect x="1" y="1" width="10" height="10" fill="currentColor" /> },
  wait: { className: '', shape: <circle cx="6" cy="6" r="4.5" fill="none" stroke="currentColor" strokeWidth="2" /> },
  look: { className: 'mark-test', shape: <path d="M6 0 12 6 6 12 0 6Z" fill="currentColor" /> },
  stuck: { className: 'mark-regrow', shape: <path d="M6 1 11 11H1Z" fill="currentColor" /> },
};

/** What to do with drying seed as a shape, words and a colour, so that no one of them carries it alone. */
export function HintMark({ hint }: { hint: StopHint }) {
  const { className, shape } = MARKS[hint.kind];
  return (
    <span className={`mark ${className}`}>
      <svg viewBox="0 0 12 12" aria-hidden="true">
        {shape}
      </svg>
      {hint.short}
    </span>
  );
}
