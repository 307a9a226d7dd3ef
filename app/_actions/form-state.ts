/** What a form shows after it was sent: messages beside fields, and everything that was typed. */
export interface FormState {
  formError: string | null;
  fieldErrors: Record<string, string>;
  /** What was typed, by field name: nothing is lost by an error. */
  values: Record<string, string>;
  /** Rises with every answer, so that focus can move to the message. */
  attempt: number;
  /** Set when the refusal was about who is asking. */
  refused?: 'sign-in-needed' | 'not-allowed';
}

export const emptyFormState: FormState = { formError: null, fieldErrors: {}, values: {}, attempt: 0 };
