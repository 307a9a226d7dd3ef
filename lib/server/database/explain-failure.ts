import { AppError } from '../app-error';

/**
 * Turns what SQLite and Prisma throw when the file itself is the trouble into words for the steward.
 * Matches codes, which are stable, before message text, which the adapter builds from the same codes.
 *
 * @returns an AppError, or null when the failure is a fault of ours and must be logged as such
 */
export function explainFailure(error: unknown): AppError | null {
  if (error instanceof AppError) return error;
  const text = failureText(error);
  if (/SQLITE_BUSY|SQLITE_LOCKED|P1008|P2034|database is locked|SocketTimeout/i.test(text)) {
    return new AppError(
      'database-busy',
      'Another program is writing to the collection just now. Nothing was saved; wait a moment and try again.',
      { cause: error },
    );
  }
  if (/SQLITE_READONLY|readonly database|read-only/i.test(text)) {
    return new AppError(
      'database-read-only',
      'The collection can be read but not written: its file or folder is write-protected. Nothing was saved. Allow writing to the data folder, then try again.',
      { cause: error },
    );
  }
  if (/SQLITE_FULL|disk is full/i.test(text)) {
    return new AppError('database-full', 'The disk is full. Nothing was saved; make room, then try again.', {
      cause: error,
    });
  }
  if (/SQLITE_CANTOPEN|unable to open database|P1003|no such table|P2021/i.test(text)) {
    return new AppError(
      'database-missing',
      "The collection's file can't be opened. Stop Hilum and start it again with 'npm run up'.",
      { cause: error },
    );
  }
  return null;
}

function failureText(error: unknown): string {
  if (!(error instanceof Error)) return String(error);
  const { code, meta, cause } = error as Error & { code?: unknown; meta?: unknown; cause?: unknown };
  return [String(code ?? ''), error.message, safeJson(meta), cause ? failureText(cause) : ''].join(' ');
}

function safeJson(value: unknown): string {
  try {
    return JSON.stringify(value) ?? '';
  } catch {
    return '';
  }
}
