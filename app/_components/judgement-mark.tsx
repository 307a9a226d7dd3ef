const MARKS = {
  regrow: { className: 'mark-regrow', label: 'Regrow', shape: <path d="M6 1 11 11H1Z" fill="currentColor" /> },
  'test-first': {
    className: 'mark-test',
    label: 'Test first',
    shape: <path d="M6 0 12 6 6 12 0 6Z" fill="currentColor" />,
  },
  leave: { className: 'mark-leave', label: 'Leave', shape: <circle cx="6" cy="6" r="5" fill="currentColor" /> },
} as const;

export type JudgedAction = keyof typeof MARKS;

/** A judgement or decision as a shape, a word and a colour, so that no one of them carries it alone. */
export function JudgementMark({ action, label }: { action: JudgedAction; label?: string }) {
  const mark = MARKS[action];
  return (
    <span className={`mark ${mark.className}`}>
      <svg viewBox="0 0 12 12" aria-hidden="true">
        {mark.shape}
      </svg>
      {label ?? mark.label}
    </span>
  );
}
