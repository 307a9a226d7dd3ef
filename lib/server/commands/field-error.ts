import { AppError } from '../app-error';

/** A refusal that belongs beside one field: what was typed cannot be taken, and what to do instead. */
export function fieldError(fieldErrors: Record<string, string>): AppError {
  return new AppError('refused', 'Some entries need another look. Nothing was saved yet.', { fieldErrors });
}
