import type { FormEvent } from 'react';

/**
 * Sends a form through its action without React's emptying of the boxes when the answer comes: by then the next code
 * may have been scanned.
 *
 * @param send  the action of useActionState, inside a transition
 */
export function sendEntry(event: FormEvent<HTMLFormElement>, send: (data: FormData) => void): FormData {
  event.preventDefault();
  const { submitter } = event.nativeEvent as SubmitEvent;
  const data = new FormData(event.currentTarget, submitter);
  send(data);
  return data;
}
