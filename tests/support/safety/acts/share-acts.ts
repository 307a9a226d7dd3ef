import { addRequestLine } from '@/lib/server/commands/add-request-line';
import { createRequest } from '@/lib/server/commands/create-request';
import { sendRequest } from '@/lib/server/commands/send-request';
import { connections } from '@/lib/server/database/connections';
import { STEWARD } from '../../people';
import { type Act, volunteer } from './act';
import { ids, packetsNow } from './bank-now';

const openRequest = () =>
  connections()
    .rows.prepare<[], { id: string; version: number; lines: number }>(
      `SELECT r."id", r."version", COUNT(l."id") AS "lines" FROM "SharingRequest" r
       LEFT JOIN "SharingLine" l ON l."requestId" = r."id" WHERE r."status" = 'open' GROUP BY r."id" ORDER BY r."rowid"`,
    )
    .get();

/** A request for seed: asked, filled, sent. */
export const SHARE_ACTS: Record<string, Act> = {
  share: (choose) => {
    const request = openRequest();
    if (!request) {
      return volunteer(createRequest, { recipient: 'Quay school', recipientKind: 'group', purpose: 'a bed of leeks' });
    }
    if (request.lines < 3 && choose.whole(0, 2) > 0) {
      const lot = choose.one(packetsNow())?.lotNumber;
      return volunteer(addRequestLine, { requestId: request.id, lot, seeds: String(choose.whole(1, 60)) });
    }
    const lines = ids(`SELECT "id" FROM "SharingLine" WHERE "requestId" = '${request.id}'`);
    const input = {
      requestId: request.id,
      version: request.version,
      measured: 'counted',
      overrule: Object.fromEntries(lines.map((id) => [id, 'they are our neighbours'])),
    };
    return { command: sendRequest, person: STEWARD, input };
  },
};
