import { describe, expect, it } from 'vitest';
import { POST } from '@/app/api/readings/route';
import { MAX_SENT_READINGS } from '@/lib/schemas/sent-readings';
import { createReadingToken } from '@/lib/server/commands/create-reading-token';
import { revokeReadingToken } from '@/lib/server/commands/revoke-reading-token';
import { takeBackReadings } from '@/lib/server/commands/take-back-readings';
import { reader } from '@/lib/server/database/connections';
import { judgeWhatIsStale } from '@/lib/server/judging/keep-fresh';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { readingDaysOf, readingsOf } from '@/tests/support/logger-text';
import { medianOf } from '@/tests/support/lot-judgement';
import { STEWARD } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

async function storeWithToken() {
  const store = await makeStore();
  return { store, ...(await createReadingToken(STEWARD, { storeId: store.id, name: 'cold room' })) };
}

const send = (token: string | null, body: BodyInit, type = 'application/json') =>
  POST(
    new Request('http://127.0.0.1:4310/api/readings', {
      method: 'POST',
      headers: { 'Content-Type': type, ...(token === null ? {} : { Authorization: `Bearer ${token}` }) },
      body,
    }),
  );
const sendReadings = (token: string, readings: unknown[]) => send(token, JSON.stringify({ readings }));

const HOUR = { at: '2026-11-20T10:00:00Z', temperatureC: 4.2, humidityPercent: 45 };

describe('readings from a script', () => {
  it('are added to the store of its token, once', async () => {
    const { store, token } = await storeWithToken();
    const later = { at: '2026-11-20T13:00:00+02:00', temperatureC: 4.3 };
    const first = await sendReadings(token, [later, HOUR]);
    expect(first.status).toBe(200);
    expect(await first.json()).toEqual({ store: store.id, added: 2, alreadyThere: 0, saidOtherwise: 0 });
    const at = Date.UTC(2026, 10, 20, 10) / 1000;
    expect(readingsOf(store.id)).toEqual([
      { atEpochSeconds: at, temperatureC: 4.2, relativeHumidity: 0.45 },
      { atEpochSeconds: at + 3600, temperatureC: 4.3, relativeHumidity: null },
    ]);
    expect(readingDaysOf(store.id)).toMatchObject([{ readings: 2, humidityReadings: 1 }]);
    expect(lastAuditLine()).toMatchObject({ command: 'post-readings', byName: 'script cold room', entityId: store.id });

    const audited = countRows('AuditEntry');
    expect(await (await sendReadings(token, [HOUR])).json()).toMatchObject({ added: 0, alreadyThere: 1 });
    expect(countRows('AuditEntry')).toBe(audited);
    expect(await reader().readingImport.findMany({ where: { storeId: store.id } })).toMatchObject([
      { kind: 'script', status: 'imported', added: 2 },
    ]);
  });

  it('may come as CSV', async () => {
    const { store, token } = await storeWithToken();
    const csv = 'at,temperatureC,humidityPercent\n2026-11-20T10:00Z,-18.4,\n2026-11-20T11:00Z,-18.2,101\n';
    expect((await send(token, csv, 'text/csv; charset=utf-8')).status).toBe(200);
    expect(readingsOf(store.id).map(({ temperatureC, relativeHumidity }) => [temperatureC, relativeHumidity])).toEqual([
      [-18.4, null],
      [-18.2, 1],
    ]);
  });

  it('are refused as a whole, with each wrong reading named', async () => {
    const { store, token } = await storeWithToken();
    const wrong = await sendReadings(token, [
      HOUR,
      { at: '2026-11-20T10:00:00', temperatureC: 4 },
      { at: '2027-01-01T00:00:00Z', temperatureC: 400 },
    ]);
    expect(wrong.status).toBe(422);
    expect(wrong.headers.get('content-type')).toBe('application/problem+json');
    const { errors } = await wrong.json();
    expect(errors.map(({ reading, field }: { reading: number; field: string }) => [reading, field])).toEqual([
      [1, 'at'],
      [2, 'at'],
      [2, 'temperatureC'],
    ]);
    const csv = await send(token, 'at,temperatureC\n2026-11-20T10:00Z,4\n2026-11-20T11:00Z,warm\n', 'text/csv');
    expect((await csv.json()).errors).toMatchObject([{ line: 3, field: 'temperatureC' }]);
    expect(readingsOf(store.id)).toEqual([]);
  });

  it('are refused without a token, with a wrong one, with a revoked one, and for another store', async () => {
    const { id, store, token } = await storeWithToken();
    const body = JSON.stringify({ readings: [HOUR] });
    for (const wrong of [null, 'short', `${token}x`, 'hilum-readings-00000000000000000000000000000000000000000000']) {
      const answer = await send(wrong, body);
      expect(answer.status).toBe(401);
      expect(answer.headers.get('www-authenticate')).toBe('Bearer');
    }
    expect((await send(token, JSON.stringify({ store: 'another', readings: [HOUR] }))).status).toBe(403);
    await revokeReadingToken(STEWARD, { id });
    expect((await send(token, body)).status).toBe(401);
    expect(readingsOf(store.id)).toEqual([]);
  });

  it('are refused when they are too many, too large, or neither JSON nor CSV', async () => {
    const { token } = await storeWithToken();
    expect((await sendReadings(token, new Array(MAX_SENT_READINGS + 1).fill(HOUR))).status).toBe(422);
    expect((await sendReadings(token, [])).status).toBe(422);
    expect((await send(token, 'x'.repeat(5 * 1024 * 1024))).status).toBe(413);
    expect((await send(token, '{"readings": [')).status).toBe(400);
    expect((await send(token, 'time,temp\n1,2\n', 'text/csv')).status).toBe(400);
    expect((await send(token, 'at=1', 'application/x-www-form-urlencoded')).status).toBe(415);
  });

  it('keeps only a hash of the token, and notes its use', async () => {
    const { id, token } = await storeWithToken();
    const before = await reader().readingToken.findUniqueOrThrow({ where: { id } });
    expect(JSON.stringify(before)).not.toContain(token.slice(20));
    expect(before.lastUsedAt).toBeNull();
    await sendReadings(token, [HOUR]);
    expect((await reader().readingToken.findUniqueOrThrow({ where: { id } })).lastUsedAt).toBeInstanceOf(Date);
  });

  it('mark the lots of the store, which are judged anew a little later', async () => {
    const { store, token } = await storeWithToken();
    const lot = await makeLot({ storeId: store.id, harvestedOn: '2026-01-20', storedOn: '2026-01-25' });
    const before = await medianOf(lot.number);
    const hot = Array.from({ length: 250 }, (_, day) => ({
      at: new Date(Date.UTC(2026, 1, 1 + day)).toISOString(),
      temperatureC: 35,
      humidityPercent: 60,
    }));
    await sendReadings(token, hot);
    expect(await reader().lotJudgement.count({ where: { lotNumber: lot.number, judgedOn: '' } })).toBe(1);
    await judgeWhatIsStale();
    expect(await medianOf(lot.number)).toBeLessThan(before - 0.05);
  });

  it('can be taken back, and be sent again', async () => {
    const { store, token } = await storeWithToken();
    await sendReadings(token, [HOUR]);
    const { id } = await reader().readingImport.findFirstOrThrow({ where: { storeId: store.id } });
    await takeBackReadings(STEWARD, { importId: id });
    expect(readingsOf(store.id)).toEqual([]);
    expect(await (await sendReadings(token, [HOUR])).json()).toMatchObject({ added: 1 });
    expect(readingsOf(store.id)).toHaveLength(1);
  });
});
