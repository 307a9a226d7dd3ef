import type { ReactNode } from 'react';

interface Props {
  /** links and forms lead to it as #id */
  id: string;
  title: ReactNode;
  /** what it is about, where the title does not say enough */
  says?: ReactNode;
  /** its form, answer and fold-out */
  children: ReactNode;
}

/** One question of a calculator that answers several. */
export function QuestionPart({ id, title, says, children }: Props) {
  return (
    <section id={id} aria-labelledby={`${id}-title`} className="grid scroll-mt-4 gap-4">
      <div>
        <h2 id={`${id}-title`}>{title}</h2>
        {says && <p className="max-w-prose">{says}</p>}
      </div>
      {children}
    </section>
  );
}
