'use client';

import type { FormState } from '@/app/_actions/form-state';
import { useFormState } from '@/app/_components/form/form';

/** What the form answers that made a calendar. */
export interface IssuedSecretState extends FormState {
  secret?: string;
}

/** The calendar's address, this once: only a hash of its secret is stored. Stands inside the form that asked for it. */
export function IssuedAddress({ bankAddress }: { bankAddress: string | null }) {
  const { secret } = useFormState().state as IssuedSecretState;
  // Where phones reach the bank if that is known; otherwise as this browser does.
  const bank = bankAddress?.replace(/\/+$/, '') ?? (typeof location === 'undefined' ? '' : location.origin);
  const address = `${bank}/api/calendar/${secret}.ics`;
  return (
    <div role="status">
      {secret && (
        <div className="grid gap-2 rounded-paper border-l-4 border-leaf bg-leaf-soft p-3">
          <p>
            Give this address to your calendar program, where it says ‘subscribe’ or ‘from the internet’. It is shown
            only this once.
          </p>
          <p className="figures wrap-anywhere font-semibold select-all">{address}</p>
          <p>
            <a href={address.replace(/^https?:/, 'webcal:')} className="inline-flex min-h-11 items-center">
              Open it in the calendar of this device
            </a>
          </p>
        </div>
      )}
    </div>
  );
}
