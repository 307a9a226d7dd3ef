import { describe, expect, it } from 'vitest';
import { createAccession } from '@/lib/server/commands/create-accession';
import type { StaleVersion } from '@/lib/server/commands/stale-version';
import { updateAccession } from '@/lib/server/commands/update-accession';
import { connections } from '@/lib/server/database/connections';
import { lastAuditLine } from '@/tests/support/audit';
import { cropIdOf, makeAccession } from '@/tests/support/create-accession';
import { STEWARD, VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const stored = (id: string) =>
  connections().bulk.prepare(`SELECT * FROM "Accession" WHERE "id" = ?`).get(id) as Record<string, unknown>;
const listed = (id: string) =>
  connections().bulk.prepare(`SELECT * FROM "AccessionJudgement" WHERE "accessionId" = ?`).get(id) as
    | Record<string, unknown>
    | undefined;

describe('createAccession', () => {
  it('gives out running numbers and skips one that was typed by hand', async () => {
    expect((await makeAccession()).number).toBe('A-0001');
    await makeAccession({ number: 'A-0002' });
    expect((await makeAccession()).number).toBe('A-0003');
  });

  it('leaves an audit entry and lists the accession although it has no seed', async () => {
    const { id } = await makeAccession({ name: 'Holm Yellow', cropId: cropIdOf('Turnip') });
    expect(lastAuditLine()).toEqual({
      command: 'create-accession',
      entity: 'accession',
      entityId: id,
      byName: 'Test steward',
      summary: 'Took in accession A-0001, Holm Yellow (Turnip)',
    });
    expect(listed(id)).toMatchObject({ accessionName: 'Holm Yellow', cropName: 'Turnip', lots: 0, seedsLeft: 0 });
  });

  it('refuses a number that is in use, in the future, an empty form and an unknown crop, each beside its field', async () => {
    await makeAccession({ number: 'X 1' });
    expect(await fieldMessage(makeAccession({ number: 'X 1' }), 'number')).toContain("another accession's number");
    expect(await fieldMessage(makeAccession({ acquiredOn: '2026-11-26' }), 'acquiredOn')).toContain('after today');
    expect(await fieldMessage(makeAccession({ cropId: 'no-such-crop' }), 'cropId')).toContain('choose another');
    const empty = await refusal(createAccession(STEWARD, {}));
    expect(empty.code).toBe('invalid-input');
    expect(Object.keys(empty.fieldErrors).sort()).toEqual(['cropId', 'name']);
  });

  it('is for stewards', async () => {
    const input = { name: 'Skerry Winter', cropId: cropIdOf('Leek') };
    expect((await refusal(createAccession(VOLUNTEER, input))).code).toBe('not-allowed');
    expect((await refusal(createAccession(VISITOR, input))).code).toBe('not-allowed');
    expect((await refusal(createAccession(null, input))).code).toBe('sign-in-needed');
  });
});

describe('updateAccession', () => {
  const change = (id: string, version: number, overrides: Record<string, unknown> = {}) =>
    updateAccession(STEWARD, { id, version, name: 'Skerry Winter', cropId: cropIdOf('Leek'), ...overrides });

  it('changes it, says what changed, and lists it under its new name', async () => {
    const { id } = await makeAccession();
    await change(id, 1, { name: 'Skerry Blue', donor: 'a neighbour' });
    expect(stored(id)).toMatchObject({ name: 'Skerry Blue', donor: 'a neighbour', version: 2 });
    expect(listed(id)).toMatchObject({ accessionName: 'Skerry Blue', searchText: expect.stringContaining('blue') });
    expect(lastAuditLine()?.summary).toBe(
      'Changed accession A-0001: name from “Skerry Winter” to “Skerry Blue”, donor filled in with “a neighbour”',
    );
  });

  it('refuses the second of two people who save at once, and tells what the first one changed', async () => {
    const { id } = await makeAccession();
    await change(id, 1, { name: 'Skerry Blue' });
    const refused = (await refusal(change(id, 1, { name: 'Skerry Grey', donor: 'a friend' }))) as StaleVersion;
    expect(refused.code).toBe('conflict');
    expect(refused.userMessage).toContain('Test steward changed name from “Skerry Winter” to “Skerry Blue”');
    expect(stored(id)).toMatchObject({ name: 'Skerry Blue', donor: null });
    await change(id, refused.currentVersion, { name: 'Skerry Grey', donor: 'a friend' });
    expect(stored(id)).toMatchObject({ name: 'Skerry Grey', donor: 'a friend', version: 3 });
  });

  it("is not in anybody's way when it changes nothing", async () => {
    const { id } = await makeAccession();
    await change(id, 1);
    await change(id, 1, { name: 'Skerry Blue' });
    expect(stored(id)).toMatchObject({ name: 'Skerry Blue', version: 2 });
  });

  it('lets exactly one of two simultaneous saves through', async () => {
    const { id } = await makeAccession();
    const outcomes = await Promise.allSettled([change(id, 1, { name: 'One' }), change(id, 1, { name: 'Two' })]);
    expect(outcomes.map((outcome) => outcome.status).sort()).toEqual(['fulfilled', 'rejected']);
  });

  it('does not know an accession that is not there', async () => {
    expect((await refusal(change('no-such-id', 1))).code).toBe('not-found');
  });
});

describe('whether an accession may be shared', () => {
  const change = (id: string, version: number, overrides: Record<string, unknown> = {}) =>
    updateAccession(STEWARD, { id, version, name: 'Skerry Winter', cropId: cropIdOf('Leek'), ...overrides });

  it('is yes unless somebody said otherwise, and then stays as it was said', async () => {
    const { id } = await makeAccession();
    expect(stored(id)).toMatchObject({ sharing: 'may', sharingTerms: null });
    await change(id, 1, { sharing: 'not', sharingTerms: 'The donor asked us not to.' });
    expect(lastAuditLine()?.summary).toContain('sharing from “may” to “not”');
    await change(id, 2, { donor: 'a neighbour' });
    expect(stored(id)).toMatchObject({ sharing: 'not', sharingTerms: 'The donor asked us not to.', version: 3 });
    await change(id, 3, { donor: 'a neighbour', sharing: 'may', sharingTerms: '' });
    expect(stored(id)).toMatchObject({ sharing: 'may', sharingTerms: null });
  });

  it('on terms wants the terms, and nothing but the three choices', async () => {
    expect(await fieldMessage(makeAccession({ sharing: 'with-terms', sharingTerms: ' ' }), 'sharingTerms')).toContain(
      'must agree to',
    );
    expect(await fieldMessage(makeAccession({ sharing: 'perhaps' }), 'sharing')).toContain('Choose');
    const { id } = await makeAccession({ sharing: 'with-terms', sharingTerms: 'Not for sale.' });
    expect(stored(id)).toMatchObject({ sharing: 'with-terms', sharingTerms: 'Not for sale.' });
  });
});
