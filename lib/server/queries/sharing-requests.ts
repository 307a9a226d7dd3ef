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
  id: string;
  on: string;
  seeds: number;
  lotNumber: string;
  /** null: taken out by hand, before or without a request */
  request: { number: string; recipient: string } | null;
  note: string | null;
}

const MOST_SHARED_SHOWN = 5;

/** Seed of these lots that went to others and was not taken back: all of it, and the latest lines of the ledger. */
export async function findShared(lotIds: readonly string[]): Promise<{ seeds: number; latest: SharedWith[] }> {
  const shared = { reason: 'sharing', corrected: { is: null }, packet: { lotId: { in: [...lotIds] } } };
  const [sum, latest] = await Promise.all([
    reader().movement.aggregate({ where: shared, _sum: { seeds: true } }),
    reader().movement.findMany({
      where: shared,
      orderBy: [{ on: 'desc' }, { id: 'desc' }],
      take: MOST_SHARED_SHOWN,
      select: {
        id: true,
        on: true,
        seeds: true,
        note: true,
        request: { select: { number: true, recipient: true } },
        packet: { select: { lot: { select: { number: true } } } },
      },
    }),
  ]);
  return {
    seeds: -(sum._sum.seeds ?? 0) + 0, // + 0 turns -0 into 0
    latest: latest.map(({ packet, seeds, ...line }) => ({ ...line, seeds: -seeds, lotNumber: packet.lot.number })),
  };
}
