export type AppErrorCode =
  | 'sign-in-needed'
  | 'not-allowed'
  | 'invalid-input'
  | 'not-found'
  | 'conflict'
  | 'refused'
  | 'database-busy'
  | 'database-read-only'
  | 'database-missing'
  | 'database-full';

/** An expected refusal. `userMessage` says what happened and what to do; it is safe to show. */
export class AppError extends Error {
  readonly code: AppErrorCode;
  readonly userMessage: string;
  /** All that a page's error boundary gets to see of an error in production (app/_components/failure-words.ts). */
  readonly digest: string;
  /** Messages beside fields, by field name. */
  readonly fieldErrors: Record<string, string>;

  constructor(
    code: AppErrorCode,
    userMessage: string,
    options: { fieldErrors?: Record<string, string>; cause?: unknown } = {},
  ) {
    super(`${code}: ${userMessage}`, { cause: options.cause });
    this.name = 'AppError';
    this.code = code;
    this.userMessage = userMessage;
    this.digest = `hilum-${code}`;
    this.fieldErrors = options.fieldErrors ?? {};
  }
}

export const notFound = (what: string) => new AppError('not-found', `${what} is not in the collection.`);
