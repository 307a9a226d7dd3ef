'use client';

import type { FormState } from '@/app/_actions/form-state';
import { useFormState } from '@/app/_components/form/form';

export interface IssuedCode {
  name: string;
  signInName: string;
  code: string;
}

/** What a form answers that made a code. */
export interface IssuedCodeState extends FormState {
  issued?: IssuedCode;
}

/** The code, this once: it is stored only as a hash. Stands inside the form that asked for it. */
export function IssuedCodeNotice() {
  const { issued } = useFormState().state as IssuedCodeState;
  return (
    <div role="status">
      {issued && (
        <div className="grid gap-2 rounded-paper border-l-4 border-leaf bg-leaf-soft p-3">
          <p>
            Give <strong>{issued.name}</strong> this code, and the sign-in name{' '}
            <strong className="figures">{issued.signInName}</strong>. On the sign-in page they choose 'Set a password
            with a code'.
          </p>
          <p className="figures text-xl font-semibold select-all">{issued.code}</p>
          <p className="text-sm">Shown only now. It works once, for 24 hours.</p>
        </div>
      )}
    </div>
  );
}
