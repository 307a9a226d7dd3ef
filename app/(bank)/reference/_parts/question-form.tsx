import type { ReactNode } from 'react';
import type { Question } from './read-question';

interface Props {
  /** where the form leads: the page itself, with an #anchor when it has several forms */
  action: string;
  /** what else the address holds than its fields is sent along */
  question: Question<unknown>;
  submit?: string;
  children: ReactNode;
}

/** Asks by address: no script, and the answer can be kept as a link. */
export function QuestionForm({ action, question, submit = 'Work it out', children }: Props) {
  const others = Object.entries(question.address).filter(([name]) => !question.fields.includes(name));
  return (
    <form action={action} className="sheet no-print grid gap-4">
      {others.map(([name, value]) => (
        <input key={name} type="hidden" name={name} value={value} />
      ))}
      <div className="grid items-end gap-4 sm:grid-cols-2 lg:grid-cols-3">{children}</div>
      <div className="flex flex-wrap items-center gap-3">
        <button type="submit" className="button main">
          {submit}
        </button>
        {question.isExample && <p className="label">An example is filled in. The address keeps what you ask.</p>}
      </div>
    </form>
  );
}
