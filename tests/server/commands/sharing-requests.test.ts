import { beforeEach, describe, expect, it } from 'vitest';
import { addRequestLine } from '@/lib/server/commands/add-request-line';
import { createRequest } from '@/lib/server/commands/create-request';
import { sendRequest } from '@/lib/server/commands/send-request';
import { setRequestLines } from '@/lib/server/commands/set-request-lines';
import type { StaleVersion } from '@/lib/server/commands/stale-version';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { turnDownRequest } from '@/lib/server/commands/turn-down-request';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { updateAccession } from '@/lib/server/commands/update-accession';
import { updateRequest } from '@/lib/server/commands/update-request';
import { connections, reader } from '@/lib/server/database/connections';
import { regrowingNeeds } from '@/lib/server/judging/regrowing-needs';
import { loadRequestLines, type RequestLine } from '@/lib/server/queries/request-lines';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { cropIdOf } from '@/tests/support/create-accession';
import { createLotWithPacket, recordTest } from '@/tests/support/create-tested-lot';
import { STEWARD, VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const ASKED = { recipient: 'The school garden', recipientKind: 'group', purpose: 'A bed of leeks' };

let requestId = '';
const version = async () => (await reader().sharingRequest.findUniqueOrThrow({ where: { id: requestId } })).version;
const status = async () => (await reader().sharingRequest.findUniqueOrThrow({ where: { id: requestId } })).status;
const lines = () => loadRequestLines(reader(), requestId);
const add = (lot: string, overrides: Record<string, unknown> = {}) =>
  addRequestLine(VOLUNTEER, { requestId, lot, ...overrides });
const send = async (overrides: Record<string, unknown> = {}) =>
  sendRequest(STEWARD, { requestId, version: await version(), measured: 'counted', ...overrides });
const ledger = (packetId: string) =>
  connections().bulk.prepare(`SELECT * FROM "Movement" WHERE "packetId" = ? ORDER BY "id"`).all(packetId) as {
    id: string;
    seeds: number;
    reason: string;
    requestId: string | null;
    note: string;
  }[];
const held = (packetId: string) => ledger(packetId).reduce((sum, movement) => sum + movement.seeds, 0);

/** A lot of leek that was tested, with 3000 seeds left unless told otherwise: leek needs far fewer to be regrown. */
async function testedLot(number = 'L-2020-001', overrides: Record<string, unknown> = {}) {
  const lot = await createLotWithPacket({ number, accessionName: `Leek ${number}`, seeds: 3000, ...overrides });
  await recordTest({ lot: number });
  return lot;
}
const forRegrowing = (lotId: string) => regrowingNeeds(connections().rows, [lotId], '2026-11-25').get(lotId) as number;
const onlyLine = async () => (await lines())[0] as RequestLine;

beforeEach(async () => {
  requestId = (await createRequest(VOLUNTEER, ASKED)).id;
});

describe('createRequest and updateRequest', () => {
  it('gives it a running number and today’s date, and leaves an audit entry', async () => {
    expect(await createRequest(VOLUNTEER, ASKED)).toMatchObject({ number: 'R-0002' });
    expect(lastAuditLine()).toMatchObject({
      command: 'create-request',
      entity: 'sharing request',
      summary: 'Opened request R-0002 of The school garden',
    });
    expect(await reader().sharingRequest.findUniqueOrThrow({ where: { id: requestId } })).toMatchObject({
      number: 'R-0001',
      askedOn: '2026-11-25',
      status: 'open',
    });
  });

  it('asks for who it is, beside the fields, and is not for visitors', async () => {
    const empty = await refusal(createRequest(VOLUNTEER, {}));
    expect(Object.keys(empty.fieldErrors).sort()).toEqual(['recipient', 'recipientKind']);
    expect(await fieldMessage(createRequest(VOLUNTEER, { ...ASKED, askedOn: '2026-11-26' }), 'askedOn')).toContain(
      'after today',
    );
    expect((await refusal(createRequest(VISITOR, ASKED))).code).toBe('not-allowed');
  });

  it('refuses the second of two people who change it at once, and tells what the first one changed', async () => {
    const change = (input: object) => updateRequest(VOLUNTEER, { id: requestId, version: 1, ...ASKED, ...input });
    await change({ purpose: 'Two beds of leeks' });
    const refused = (await refusal(change({ contact: 'at the gate' }))) as StaleVersion;
    expect(refused.userMessage).toContain('purpose from “A bed of leeks” to “Two beds of leeks”');
    await change({ contact: 'at the gate', version: refused.currentVersion });
    expect(await version()).toBe(3);
  });
});

describe('addRequestLine', () => {
  it('offers fifty seeds of the fullest active packet, whatever case the number is typed in', async () => {
    const lot = await testedLot();
    expect(await add('l-2020-001')).toMatchObject({ lotNumber: 'L-2020-001', seeds: 50 });
    expect(await onlyLine()).toMatchObject({ seeds: 50, hindrance: null, packet: { id: lot.packetId } });
    expect(lastAuditLine()?.summary).toBe('Put 50 seeds of lot L-2020-001 on request R-0001, from packet P-00001');
  });

  it('refuses a lot whose accession may not be shared, and says why', async () => {
    const lot = await testedLot();
    await updateAccession(STEWARD, {
      id: lot.accessionId,
      version: 1,
      name: 'Skerry Winter',
      cropId: cropIdOf('Leek'),
      sharing: 'not',
      sharingTerms: 'The family keeps it.',
    });
    expect(await fieldMessage(add('L-2020-001'), 'lot')).toBe(
      'Skerry Winter (A-0001) may not be shared: The family keeps it.',
    );
    expect(await lines()).toEqual([]);
  });

  it('refuses what is not there, what is on the list, what is empty and more than there is', async () => {
    const lot = await testedLot();
    expect(await fieldMessage(add('L-1999-001'), 'lot')).toContain('No lot has the number “L-1999-001”');
    expect(await fieldMessage(add('L-2020-001', { seeds: '3001' }), 'seeds')).toBe(
      'Packet P-00001 holds about 3000 seeds.',
    );
    await add('L-2020-001');
    expect(await fieldMessage(add('L-2020-001'), 'lot')).toBe('L-2020-001 is on this list already.');
    await setRequestLines(VOLUNTEER, {
      requestId,
      version: await version(),
      lines: [{ id: (await onlyLine()).id, packetId: lot.packetId, seeds: '1', remove: 'on' }],
    });
    await takeSeedOut(VOLUNTEER, { packetId: lot.packetId, amount: '3000', unit: 'seeds', reason: 'loss' });
    expect(await fieldMessage(add('L-2020-001'), 'lot')).toContain('No active stock of L-2020-001 is left');
  });

  it('does not draw from base stock or a safety duplicate', async () => {
    const lot = await testedLot();
    connections().bulk.prepare(`UPDATE "Packet" SET "role" = 'base' WHERE "id" = ?`).run(lot.packetId);
    expect(await fieldMessage(add('L-2020-001'), 'lot')).toContain('Base stock and safety duplicates');
  });
});

describe('setRequestLines', () => {
  it('changes seeds and note, and takes a line out', async () => {
    const lot = await testedLot();
    await testedLot('L-2020-002');
    await add('L-2020-001');
    await add('L-2020-002');
    const [first, second] = (await lines()) as [RequestLine, RequestLine];
    await setRequestLines(VOLUNTEER, {
      requestId,
      version: await version(),
      lines: [
        { id: first.id, packetId: lot.packetId, seeds: '120', note: 'for two beds' },
        { id: second.id, packetId: second.packet?.id, seeds: '50', remove: 'on' },
      ],
    });
    expect(await lines()).toMatchObject([{ seeds: 120, note: 'for two beds' }]);
    expect(lastAuditLine()?.summary).toBe(
      'Changed the list of request R-0001: 120 seeds of lot L-2020-001 from P-00001, lot L-2020-002 taken out',
    );
  });

  it('changes nothing at all when one line cannot be, and says so beside it', async () => {
    const lot = await testedLot();
    const other = await testedLot('L-2020-002');
    await add('L-2020-001');
    await add('L-2020-002');
    const [first, second] = (await lines()) as [RequestLine, RequestLine];
    const attempt = setRequestLines(VOLUNTEER, {
      requestId,
      version: await version(),
      lines: [
        { id: first.id, packetId: lot.packetId, seeds: '120' },
        { id: second.id, packetId: other.packetId, seeds: '3001' },
      ],
    });
    expect((await refusal(attempt)).fieldErrors).toEqual({ 'lines.1.seeds': 'Packet P-00002 holds about 3000 seeds.' });
    expect(await lines()).toMatchObject([{ seeds: 50 }, { seeds: 50 }]);
  });

  it('does not save over somebody else’s lines, and keeps theirs when it is saved again', async () => {
    const lot = await testedLot();
    await testedLot('L-2020-002');
    await add('L-2020-001');
    const before = await version();
    await add('L-2020-002');
    const line = { id: (await onlyLine()).id, packetId: lot.packetId, seeds: '80' };
    const refused = (await refusal(
      setRequestLines(VOLUNTEER, { requestId, version: before, lines: [line] }),
    )) as StaleVersion;
    expect(refused.userMessage).toContain('changed while you were writing');
    await setRequestLines(VOLUNTEER, { requestId, version: refused.currentVersion, lines: [line] });
    expect(await lines()).toMatchObject([{ seeds: 80 }, { seeds: 50 }]);
  });
});

describe('sendRequest', () => {
  it('takes every line out of its packet, settles the request, and judges the lots anew', async () => {
    const first = await testedLot();
    const second = await testedLot('L-2020-002');
    await add('L-2020-001');
    await add('L-2020-002', { seeds: '30', note: 'for the school' });
    await send({ on: '2026-11-20' });
    expect(ledger(first.packetId).at(-1)).toMatchObject({
      seeds: -50,
      reason: 'sharing',
      requestId,
      on: '2026-11-20',
      seedsSd: 0,
      note: 'request R-0001 to The school garden',
    });
    expect(ledger(second.packetId).at(-1)?.note).toBe('request R-0001 to The school garden; for the school');
    expect(await status()).toBe('sent');
    expect(await lines()).toMatchObject([
      { hindrance: null, movement: { seeds: 50, on: '2026-11-20', takenBackOn: null } },
      { hindrance: null, movement: { seeds: 30 } },
    ]);
    const judged = await reader().lotJudgement.findMany({ orderBy: { lotNumber: 'asc' } });
    expect(judged.map((lot) => [lot.seedsLeft, lot.judgedOn])).toEqual([
      [2950, '2026-11-25'],
      [2970, '2026-11-25'],
    ]);
    const packets = await reader().auditEntry.findMany({ where: { command: 'send-request', entity: 'packet' } });
    expect(packets.map((entry) => [entry.entityId, entry.before, entry.after])).toEqual([
      [first.packetId, '{"seeds":3000}', '{"seeds":2950}'],
      [second.packetId, '{"seeds":3000}', '{"seeds":2970}'],
    ]);
    expect(lastAuditLine()?.summary).toBe('Sent request R-0001 to The school garden: 2 lots');
  });

  it('writes the weight as the pack list gives it, with its spread, where the lot has a thousand-seed weight', async () => {
    const lot = await testedLot();
    connections().bulk.prepare(`UPDATE "Lot" SET "thousandSeedWeightG" = 2.8137 WHERE "id" = ?`).run(lot.lotId);
    await add('L-2020-001');
    await send({ measured: 'weighed' });
    const line = ledger(lot.packetId).at(-1) as unknown as { grams: number; seedsSd: number };
    expect(line.grams).toBe(-0.141);
    expect(line.seedsSd).toBeGreaterThan(0.5);
  });

  it('keeps enough for two regrowings and the tests, unless a steward says why not', async () => {
    const lot = await testedLot();
    const kept = 200 + forRegrowing(lot.lotId);
    const spare = 3000 - kept;
    await add('L-2020-001', { seeds: String(spare + 1) });
    const { id, hindrance } = await onlyLine();
    expect(hindrance?.sentence).toContain(`Only ${spare} seeds can be spared`);
    const message = await fieldMessage(send(), `overrule.${id}`);
    expect(message).toContain('Write why it goes all the same');
    expect(held(lot.packetId)).toBe(3000);
    expect(await status()).toBe('open');
    expect(await fieldMessage(send({ overrule: { [id]: '  ' } }), `overrule.${id}`)).toBe(message);

    await send({ overrule: { [id]: 'They grow it for us.' } });
    expect(held(lot.packetId)).toBe(3000 - spare - 1);
    expect(ledger(lot.packetId).at(-1)?.note).toBe(
      'request R-0001 to The school garden; all the same: They grow it for us.',
    );
    expect(lastAuditLine()?.summary).toContain('L-2020-001 though too little kept: They grow it for us.');
  });

  it('lets the last seed go that can be spared', async () => {
    const lot = await testedLot();
    const kept = 200 + forRegrowing(lot.lotId);
    await add('L-2020-001', { seeds: String(3000 - kept) });
    await send();
    expect(held(lot.packetId)).toBe(kept);
  });

  it('refuses an accession that has come to be not shared, whatever reason is written', async () => {
    const lot = await testedLot();
    await add('L-2020-001');
    connections().bulk.prepare(`UPDATE "Accession" SET "sharing" = 'not' WHERE "id" = ?`).run(lot.accessionId);
    const { id } = await onlyLine();
    expect(await fieldMessage(send({ overrule: { [id]: 'because' } }), `line.${id}`)).toContain('may not be shared');
    expect(held(lot.packetId)).toBe(3000);
  });

  it('wants a tick for terms and one for treated seed', async () => {
    const lot = await testedLot('L-2020-001', { treatment: 'thiram' });
    connections()
      .bulk.prepare(`UPDATE "Accession" SET "sharing" = 'with-terms', "sharingTerms" = 'Not for sale' WHERE "id" = ?`)
      .run(lot.accessionId);
    await add('L-2020-001');
    const { id } = await onlyLine();
    const refused = await refusal(send());
    expect(Object.keys(refused.fieldErrors).sort()).toEqual([`terms.${id}`, `treated.${id}`]);
    expect(Object.keys((await refusal(send({ terms: { [id]: 'on' } }))).fieldErrors)).toEqual([`treated.${id}`]);
    await send({ terms: { [id]: 'on' }, treated: { [id]: 'on' } });
    expect(held(lot.packetId)).toBe(2950);
  });

  it('sends nothing at all when one packet holds too little by now, and says so beside that line', async () => {
    const first = await testedLot();
    const second = await testedLot('L-2020-002');
    await add('L-2020-001');
    await add('L-2020-002');
    await takeSeedOut(VOLUNTEER, { packetId: second.packetId, amount: '2980', unit: 'seeds', reason: 'sowing' });
    const [, short] = (await lines()) as [RequestLine, RequestLine];
    const movements = countRows('Movement');
    const refused = await refusal(send());
    expect(refused.fieldErrors).toEqual({
      [`line.${short.id}`]: 'P-00002 holds 20 seeds for this line. Take fewer, or another packet.',
    });
    expect(countRows('Movement')).toBe(movements);
    expect(held(first.packetId)).toBe(3000);
    expect(await status()).toBe('open');
  });

  it('sends once when two stewards send at the same moment', async () => {
    const lot = await testedLot();
    await add('L-2020-001');
    const input = { requestId, version: await version(), measured: 'counted' };
    const outcomes = await Promise.allSettled([sendRequest(STEWARD, input), sendRequest(STEWARD, input)]);
    expect(outcomes.map((outcome) => outcome.status).sort()).toEqual(['fulfilled', 'rejected']);
    expect(held(lot.packetId)).toBe(2950);
    expect((await refusal(sendRequest(STEWARD, input))).userMessage).toContain('was sent on 2026-11-25');
  });

  it('sends nothing that was not on the screen', async () => {
    await testedLot();
    await testedLot('L-2020-002');
    await add('L-2020-001');
    const seen = await version();
    await add('L-2020-002');
    const refused = await refusal(sendRequest(STEWARD, { requestId, version: seen, measured: 'counted' }));
    expect(refused.userMessage).toContain('changed while you looked at it');
    expect(await status()).toBe('open');
  });

  it('refuses an empty list, a day before the packet was filled, and whoever is no steward', async () => {
    expect((await refusal(send())).userMessage).toContain('nothing on the list yet');
    await testedLot();
    await add('L-2020-001');
    expect(await fieldMessage(send({ on: '2020-09-14' }), 'on')).toContain('filled on 2020-09-15');
    expect(await fieldMessage(send({ measured: '' }), 'measured')).toContain('Choose');
    const byVolunteer = sendRequest(VOLUNTEER, { requestId, version: await version(), measured: 'counted' });
    expect((await refusal(byVolunteer)).code).toBe('not-allowed');
  });

  it('asks a steward about a lot without a forecast', async () => {
    const lot = await createLotWithPacket({ seeds: 3000 });
    connections().bulk.prepare(`UPDATE "Crop" SET "longevityConstantsId" = NULL WHERE "id" = ?`).run(lot.cropId);
    await add('L-2020-001');
    const { id, hindrance } = await onlyLine();
    expect(hindrance?.kind).toBe('no-forecast');
    expect(await fieldMessage(send(), `overrule.${id}`)).toContain('Write why');
    await send({ overrule: { [id]: 'Plenty left.' } });
    expect(held(lot.packetId)).toBe(2950);
  });

  it('shows a line that was taken back afterwards, and its seed is there again', async () => {
    const lot = await testedLot();
    await add('L-2020-001');
    await send();
    await undoMovement(VOLUNTEER, { movementId: (await onlyLine()).movement?.id });
    expect(held(lot.packetId)).toBe(3000);
    expect((await onlyLine()).movement?.takenBackOn).toBe('2026-11-25');
  });

  it('leaves nothing to change once it is sent', async () => {
    await testedLot();
    await add('L-2020-001');
    await send();
    const { id, packet } = await onlyLine();
    const attempts = [
      add('L-2020-001'),
      setRequestLines(VOLUNTEER, {
        requestId,
        version: await version(),
        lines: [{ id, packetId: packet?.id, seeds: '1', remove: 'on' }],
      }),
      updateRequest(VOLUNTEER, { id: requestId, version: await version(), ...ASKED }),
      turnDownRequest(STEWARD, { requestId, version: await version(), reason: 'no' }),
    ];
    for (const attempt of attempts) expect((await refusal(attempt)).code).toBe('conflict');
  });
});

describe('turnDownRequest', () => {
  it('settles it with the reason and moves no seed', async () => {
    const lot = await testedLot();
    await add('L-2020-001');
    const turnDown = async (input: object) =>
      turnDownRequest(STEWARD, { requestId, version: await version(), ...input });
    expect(await fieldMessage(turnDown({}), 'reason')).toBe('Fill this in.');
    await turnDown({ reason: 'Too late for this year.' });
    expect(await reader().sharingRequest.findUniqueOrThrow({ where: { id: requestId } })).toMatchObject({
      status: 'turned-down',
      settledOn: '2026-11-25',
      notes: 'Turned down: Too late for this year.',
    });
    expect(held(lot.packetId)).toBe(3000);
    expect((await refusal(send())).userMessage).toContain('was turned down on 2026-11-25');
  });
});
