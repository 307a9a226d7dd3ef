'use client';

import type { FormState } from '@/app/_actions/form-state';
import { useFormState } from '@/app/_components/form/form';

/** What a form answers that made a token. */
export interface IssuedTokenState extends FormState {
  token?: string;
}

/** The token, this once: it is stored only as a hash. Stands inside the form that asked for it. */
export function IssuedToken() {
  const { token } = useFormState().state as IssuedTokenState;
  return (
    <div role="status">
      {token && (
        <div className="grid gap-2 rounded-paper border-l-4 border-leaf bg-leaf-soft p-3">
          <p>Put this token into the script now. It is shown only this once.</p>
          <p className="figures wrap-anywhere font-semibold select-all">{token}</p>
        </div>
      )}
    </div>
  );
}
