'use client';

import { createContext, type ReactNode, useActionState, useContext, useEffect, useRef } from 'react';
import { emptyFormState, type FormState } from '@/app/_actions/form-state';
import { Notice } from '../notice';

interface FormContextValue {
  state: FormState;
  pending: boolean;
}

const FormContext = createContext<FormContextValue>({ state: emptyFormState, pending: false });

export const useFormState = () => useContext(FormContext);

interface Props {
  action: (state: FormState, data: FormData) => Promise<FormState>;
  children: ReactNode;
  className?: string;
}

/**
 * A form over a server action. Works before scripts load; after an error it keeps what was typed, puts the message
 * beside its field and moves focus to the first one that needs another look.
 */
export function Form({ action, children, className }: Props) {
  const [state, formAction, pending] = useActionState(action, emptyFormState);
  const formRef = useRef<HTMLFormElement>(null);
  useEffect(() => {
    if (state.attempt === 0) return;
    const invalid = formRef.current?.querySelector<HTMLElement>('[aria-invalid="true"]');
    (invalid ?? formRef.current?.querySelector<HTMLElement>('[role="alert"]'))?.focus();
  }, [state.attempt]);
  return (
    <form ref={formRef} action={formAction} noValidate className={className ?? 'grid gap-5'}>
      <FormContext value={{ state, pending }}>
        {state.formError && <Notice kind="error">{state.formError}</Notice>}
        {children}
      </FormContext>
    </form>
  );
}
