import type { ReactNode } from 'react';

interface Props {
  /** the equation, and what its letters mean */
  equation: ReactNode;
  /** where it comes from, with its mark: published, common practice, from memory, our own choice */
  source: ReactNode;
  /** when it misleads */
  limits: ReactNode;
  /** what the program's figures were compared with, and how far they were off */
  checked: ReactNode;
  /** the page in docs/methods */
  page: string;
}

/** How an answer was worked out, folded away until somebody wants to know. */
export function MethodFoldOut({ equation, source, limits, checked, page }: Props) {
  return (
    <details className="sheet py-2!">
      <summary className="min-h-11 cursor-pointer py-2 font-semibold">Equation, source and limits</summary>
      <dl className="grid max-w-prose gap-3 pt-2">
        <Part title="Equation">{equation}</Part>
        <Part title="When it misleads">{limits}</Part>
        <Part title="Source">{source}</Part>
        <Part title="Checked against">{checked}</Part>
      </dl>
      <p className="label pt-3">
        In full: <span className="figures">docs/methods/{page}</span>, which comes with the program.
      </p>
    </details>
  );
}

function Part({ title, children }: { title: string; children: ReactNode }) {
  return (
    <div>
      <dt className="label">{title}</dt>
      <dd className="grid gap-1">{children}</dd>
    </div>
  );
}
