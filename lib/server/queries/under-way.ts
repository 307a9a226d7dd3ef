import 'server-only';
import { reader } from '../database/connections';

/** Work in the seed room that somebody has begun: a stock-take, seed that dries, a request not yet settled. */
export interface UnderWay {
  kind: 'stock-take' | 'drying' | 'request';
  number: string;
  /** the store, the variety that dries, who asks */
  about: string;
  since: string;
}

/** All of it, what has waited longest first, in one statement. */
export function findUnderWay(): Promise<UnderWay[]> {
  return reader().$queryRaw<UnderWay[]>`
    SELECT 'stock-take' AS "kind", t."number", s."name" AS "about", t."startedOn" AS "since"
    FROM "StockTake" t JOIN "Store" s ON s."id" = t."storeId" WHERE t."status" = 'open'
    UNION ALL
    SELECT 'drying', r."number", a."name", r."startedOn"
    FROM "DryingRun" r JOIN "Lot" l ON l."id" = r."lotId" JOIN "Accession" a ON a."id" = l."accessionId"
    WHERE r."endedOn" IS NULL
    UNION ALL
    SELECT 'request', q."number", q."recipient", q."askedOn" FROM "SharingRequest" q WHERE q."status" = 'open'
    ORDER BY "since", "number"`;
}
