import { REQUEST_STATES, type RequestState } from '@/lib/domain/stock/request-states';

const MARKS: Record<RequestState, { className: string; shape: React.ReactNode }> = {
  open: { className: 'mark-test', shape: <path d="M6 0 12 6 6 12 0 6Z" fill="currentColor" /> },
  sent: { className: 'mark-leave', shape: <circle cx="6" cy="6" r="5" fill="currentColor" /> },
  'turned-down': { className: '', shape: <path d="M1 5h10v2H1Z" fill="currentColor" /> },
};

/** Where a request stands, as a shape, a word and a colour. */
export function RequestMark({ state }: { state: RequestState }) {
  const { className, shape } = MARKS[state];
  return (
    <span className={`mark ${className}`}>
      <svg viewBox="0 0 12 12" aria-hidden="true">
        {shape}
      </svg>
      {REQUEST_STATES.find(({ key }) => key === state)?.label}
    </span>
  );
}
