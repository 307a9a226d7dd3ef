import { beforeEach, describe, expect, it } from 'vitest';
import { addRequestLine } from '@/lib/server/commands/add-request-line';
import { createRequest } from '@/lib/server/commands/create-request';
import { sendRequest } from '@/lib/server/commands/send-request';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { connections, reader } from '@/lib/server/database/connections';
import { findBagsToLabel } from '@/lib/server/queries/bag-labels';
import { createLotWithPacket, recordTest } from '@/tests/support/create-tested-lot';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const REQUEST = 'R-0001';
let requestId = '';
let treated: Awaited<ReturnType<typeof createLotWithPacket>>;

beforeEach(async () => {
  requestId = (await createRequest(VOLUNTEER, { recipient: 'The school garden', recipientKind: 'group' })).id;
  treated = await createLotWithPacket({ number: 'L-2020-002', seeds: 3000, treatment: 'thiram' });
  await createLotWithPacket({ number: 'L-2020-001', accessionName: 'Holm Blue', seeds: 3000 });
  for (const lot of ['L-2020-001', 'L-2020-002']) await recordTest({ lot });
  await addRequestLine(VOLUNTEER, { requestId, lot: 'L-2020-002', seeds: '80' });
  await addRequestLine(VOLUNTEER, { requestId, lot: 'L-2020-001' });
});

const bags = async () => (await findBagsToLabel(REQUEST))?.bags ?? [];
const set = (table: 'Accession' | 'Lot', column: string, value: unknown, id: string) =>
  connections().bulk.prepare(`UPDATE "${table}" SET "${column}" = ? WHERE "id" = ?`).run(value, id);

describe('the bags of a request', () => {
  it('are its lines in order, with all that stands on their labels', async () => {
    set('Accession', 'sharing', 'with-terms', treated.accessionId);
    set('Lot', 'thousandSeedWeightG', 2.5, treated.lotId);
    const bank = await reader().bank.findUniqueOrThrow({ where: { id: 1 } });
    const found = await findBagsToLabel(REQUEST);
    expect(found?.recipient).toBe('The school garden');
    expect(found?.bags.map((bag) => bag.lotNumber)).toEqual(['L-2020-002', 'L-2020-001']);
    expect(found?.bags[0]).toEqual({
      lineId: expect.any(String),
      requestNumber: REQUEST,
      bankName: bank.name,
      lotNumber: 'L-2020-002',
      accessionName: 'Skerry Winter',
      cropName: 'Leek',
      harvestedOn: '2020-09-15',
      seeds: 80,
      grams: 0.2,
      germination: { germinated: 81, sown: 100, testedOn: '2026-03-16' },
      treatment: 'thiram',
      onTerms: true,
    });
    expect(found?.bags[1]).toMatchObject({ accessionName: 'Holm Blue', grams: null, treatment: null, onTerms: false });
  });

  it('that were sent are those that went: without what was taken back', async () => {
    const { version } = await reader().sharingRequest.findUniqueOrThrow({ where: { id: requestId } });
    const [first, second] = await bags();
    const treatedTicks = { [first?.lineId ?? '']: 'on' };
    await sendRequest(STEWARD, { requestId, version, measured: 'counted', treated: treatedTicks });
    expect((await bags()).map((bag) => bag.seeds)).toEqual([80, second?.seeds]);
    const movement = await reader().movement.findFirstOrThrow({ where: { reason: 'sharing', seeds: -80 } });
    await undoMovement(VOLUNTEER, { movementId: movement.id });
    expect((await bags()).map((bag) => bag.lotNumber)).toEqual(['L-2020-001']);
  });

  it('of a request that is not there are none', async () => {
    expect(await findBagsToLabel('R-0099')).toBeNull();
  });
});
