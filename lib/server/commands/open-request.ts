import type { Prisma } from '@/generated/prisma/client';
import { AppError, notFound } from '../app-error';

export interface OpenRequest {
  id: string;
  number: string;
  recipient: string;
  notes: string | null;
  version: number;
}

/**
 * A request that can still be changed.
 *
 * @throws AppError 'not-found', or 'conflict' when it was settled already
 */
export async function requireOpenRequest(tx: Prisma.TransactionClient, id: string): Promise<OpenRequest> {
  const request = await tx.sharingRequest.findUnique({
    where: { id },
    select: { id: true, number: true, recipient: true, notes: true, version: true, status: true, settledOn: true },
  });
  if (!request) throw notFound('This request');
  const { status, settledOn, ...open } = request;
  if (status !== 'open') {
    const how = status === 'sent' ? 'sent' : 'turned down';
    throw new AppError(
      'conflict',
      `Request ${request.number} was ${how} on ${settledOn}: nothing of it can be changed.`,
    );
  }
  return open;
}

/** Refuses to settle a request that is not as it stood on the screen. */
export function refuseChangedRequest(request: OpenRequest, formVersion: number): void {
  if (request.version === formVersion) return;
  throw new AppError(
    'conflict',
    `Request ${request.number} was changed while you looked at it, so nothing was done. It is shown below as it is now: look it over and press again.`,
  );
}
