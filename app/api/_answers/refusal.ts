import { AppError } from '@/lib/server/app-error';
import { log } from '@/lib/server/log';
import { problem } from './problem';

/** An AppError as a problem in words; anything else is a fault of ours, logged and not told. */
export function refusalOf(error: unknown, what: string): Response {
  if (error instanceof AppError) {
    if (error.code === 'sign-in-needed') return problem(401, 'Sign in first', error.userMessage);
    if (error.code === 'not-allowed') return problem(403, 'Not for this role', error.userMessage);
    if (error.code === 'not-found') return problem(404, 'Not here', error.userMessage);
    if (error.code === 'invalid-input') return problem(422, 'Not understood', error.userMessage);
    return problem(503, 'Not now', error.userMessage);
  }
  log.error({ error }, `${what} failed`);
  return problem(500, 'A fault of Hilum', 'Nothing was saved. Try again later.');
}
