import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import type { RequestState } from '@/lib/domain/stock/request-states';
import type { RequestListQuery } from '@/lib/schemas/sharing-query';
import { reader } from '../database/connections';
import { type LastGermination, lastGerminations } from './last-germination';
import { type ListPage, where } from './list-page';
import { loadRequestLines, type RequestLine } from './request-lines';

export const REQUESTS_PER_PAGE = 25;

export interface RequestRow {
  number: string;
  recipient: string;
  recipientKind: string;
  askedOn: string;
  status: RequestState;
  settledOn: string | null;
  lines: number;
  seeds: number;
}

function conditions({ q, state }: RequestListQuery): Prisma.Sql[] {
  const all: Prisma.Sql[] = [];
  if (state) all.push(Prisma.sql`"status" = ${state}`);
  if (q) {
    const pattern = `%${q.replace(/[\\%_]/g, '\\$&')}%`;
    all.push(Prisma.sql`("recipient" LIKE ${pattern} ESCAPE '\\' OR "number" LIKE ${pattern} ESCAPE '\\')`);
  }
  return all;
}

/** Requests, open ones first, then those settled last: three statements however many there are. */
export async function findRequests(query: RequestListQuery): Promise<ListPage<RequestRow>> {
  const [counted] = await reader().$queryRaw<{ total: bigint }[]>`
    SELECT COUNT(*) AS total FROM "SharingRequest" ${where(conditions(query))}`;
  const total = Number(counted?.total ?? 0);
  const pages = Math.max(1, Math.ceil(total / REQUESTS_PER_PAGE));
  const page = Math.min(query.page, pages);
  const requests = await reader().$queryRaw<(Omit<RequestRow, 'lines' | 'seeds'> & { id: string })[]>`
    SELECT "id", "number", "recipient", "recipientKind", "askedOn", "status", "settledOn" FROM "SharingRequest"
    ${where(conditions(query))}
    ORDER BY "status" = 'open' DESC, COALESCE("settledOn", "askedOn") DESC, "number" DESC
    LIMIT ${REQUESTS_PER_PAGE} OFFSET ${(page - 1) * REQUESTS_PER_PAGE}`;
  const sums = await reader().sharingLine.groupBy({
    by: ['requestId'],
    where: { requestId: { in: requests.map((request) => request.id) } },
    _count: { id: true },
    _sum: { seeds: true },
  });
  const sumOf = new Map(sums.map((sum) => [sum.requestId, sum]));
  const rows = requests.map(({ id, ...request }) => ({
    ...request,
    lines: sumOf.get(id)?._count.id ?? 0,
    seeds: sumOf.get(id)?._sum.seeds ?? 0,
  }));
  return { rows, total, page, pages };
}

export interface RequestPage {
  id: string;
  number: string;
  recipient: string;
  recipientKind: string;
  contact: string | null;
  purpose: string | null;
  askedOn: string;
  status: RequestState;
  settledOn: string | null;
  notes: string | null;
  version: number;
  lines: RequestLine[];
}

/** A request with its lines; null when there is no such number. */
export async function getRequest(number: string): Promise<RequestPage | null> {
  const request = await reader().sharingRequest.findUnique({
    where: { number },
    select: {
      id: true,
      number: true,
      recipient: true,
      recipientKind: true,
      contact: true,
      purpose: true,
      askedOn: true,
      status: true,
      settledOn: true,
      notes: true,
      version: true,
    },
  });
  if (!request) return null;
  return { ...request, status: request.status as RequestState, lines: await loadRequestLines(reader(), request.id) };
}

/** The same with what the pack list says of each lot's germination, by lot id. */
export async function getPackList(
  number: string,
): Promise<{ request: RequestPage; germinations: Map<string, LastGermination>; bankName: string } | null> {
  const [request, bank] = await Promise.all([
    getRequest(number),
    reader().bank.findUniqueOrThrow({ where: { id: 1 }, select: { name: true } }),
  ]);
  if (!request) return null;
  const lotIds = request.lines.flatMap((line) => (line.lot ? [line.lot.id] : []));
  return { request, germinations: await lastGerminations(lotIds), bankName: bank.name };
}

export interface SharedWith {
  requestNumber: string;
  recipient: string;
  on: string;
  lotNumber: string;
  seeds: number;
}

const MOST_SHARED_SHOWN = 5;

/** Seed of these lots that went to others by request and was not taken back, latest first. */
export async function findShared(lotIds: readonly string[]): Promise<{ seeds: number; latest: SharedWith[] }> {
  const lines = await reader().sharingLine.findMany({
    where: { lotId: { in: [...lotIds] }, movement: { corrected: null } },
    orderBy: [{ movement: { on: 'desc' } }, { id: 'desc' }],
    select: {
      lot: { select: { number: true } },
      movement: { select: { on: true, seeds: true } },
      request: { select: { number: true, recipient: true } },
    },
  });
  const shared = lines.flatMap(({ lot, movement, request }) =>
    lot && movement
      ? [
          {
            requestNumber: request.number,
            recipient: request.recipient,
            on: movement.on,
            lotNumber: lot.number,
            seeds: -movement.seeds,
          },
        ]
      : [],
  );
  return {
    seeds: shared.reduce((sum, one) => sum + one.seeds, 0),
    latest: shared.slice(0, MOST_SHARED_SHOWN),
  };
}
