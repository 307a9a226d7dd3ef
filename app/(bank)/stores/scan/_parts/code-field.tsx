'use client';

import { useEffect, useId, useRef } from 'react';

interface Props {
  typed: string;
  error: string | null;
}

/** For a hand scanner, which types the code and Enter, and for hands. A plain form: it works before scripts load. */
export function CodeField({ typed, error }: Props) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    // A hand scanner hangs on a computer; on a phone the keyboard would cover the picture.
    if (window.matchMedia('(pointer: fine)').matches) input.current?.focus({ preventScroll: true });
  }, []);
  return (
    <form action="/stores/scan" className="grid gap-1">
      <label htmlFor={id} className="font-semibold">
        Number, or hand scanner
      </label>
      <p id={`${id}-hint`} className="label">
        P-00012, L-2024-007 or T-0204. A hand scanner types it and presses Enter.
      </p>
      <div className="flex gap-2">
        <input
          ref={input}
          id={id}
          name="code"
          defaultValue={typed}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          aria-invalid={error ? true : undefined}
          aria-describedby={`${id}-hint ${id}-error`}
          className="field figures"
        />
        <button type="submit" className="button">
          Find
        </button>
      </div>
      <p id={`${id}-error`} className="text-sm font-semibold text-madder empty:hidden">
        {error}
      </p>
    </form>
  );
}
