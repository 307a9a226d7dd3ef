import { AppError } from '../app-error';

/** The same words for an unknown name, a wrong code, one that was used, and one that is too old. */
export const WRONG_CODE = 'That name and code do not go together, or the code is older than a day. Ask for a new one.';

export const wrongCode = (message: string): AppError =>
  new AppError('invalid-input', message, { fieldErrors: { code: 'Check the code.' } });
