import { describe, expect, it } from 'vitest';
import { newViabilityTestQuery, viabilityTestInput } from '@/lib/schemas/viability-test';

const TODAY = '2026-11-25';
const schema = viabilityTestInput(TODAY);
const written = (overrides: object = {}) => ({
  lot: 'L-2020-001',
  kind: 'tetrazolium',
  testedOn: '2026-11-20',
  stainedNormally: '45',
  stainedAbnormally: '3',
  unstained: '2',
  ...overrides,
});
const read = (overrides: object = {}) => schema.parse(written(overrides));
const complaints = (overrides: object = {}) => {
  const { error } = schema.safeParse(written(overrides));
  return Object.fromEntries((error?.issues ?? []).map((issue) => [issue.path.join('.'), issue.message]));
};

describe('counts of a viability test', () => {
  it('are those of its kind; blank ones are 0, those of the other kind nothing', () => {
    expect(read({ stainedAbnormally: '', firm: '12' })).toMatchObject({
      seeds: 47,
      counts: { stainedNormally: 45, stainedAbnormally: 0, unstained: 2, firm: null, empty: null, dead: null },
    });
    expect(read({ kind: 'cut', firm: '38', empty: '6', insectDamaged: '2', dead: '4' })).toMatchObject({
      seeds: 50,
      counts: { firm: 38, empty: 6, insectDamaged: 2, dead: 4, stainedNormally: null },
    });
  });

  it('must say how many are alive: 0 has to be written, blank is forgotten', () => {
    expect(complaints({ stainedNormally: '' })).toEqual({ stainedNormally: expect.stringContaining('0 if none') });
    expect(complaints({ kind: 'cut', empty: '3' })).toEqual({ firm: expect.stringContaining('full and firm') });
    expect(read({ stainedNormally: '0' }).seeds).toBe(5);
  });

  it('add to at least one seed', () => {
    expect(complaints({ stainedNormally: '0', stainedAbnormally: '', unstained: '0' })).toEqual({
      stainedNormally: expect.stringContaining('at least 1 seed'),
    });
  });

  it('are whole numbers that a hand can count', () => {
    expect(complaints({ unstained: '-1' }).unstained).toContain('between 0 and 5000');
    expect(complaints({ unstained: '2,5' }).unstained).toContain('whole number');
    expect(complaints({ unstained: '5001' }).unstained).toBeDefined();
    expect(complaints({ unstained: 'two' }).unstained).toContain('Write a number');
    expect(read({ unstained: '5000' }).seeds).toBe(5048);
  });
});

describe('the seed of a viability test', () => {
  it('is taken from a packet that is named', () => {
    expect(complaints({ takeSeed: 'on' })).toEqual({ packetId: expect.stringContaining('Choose the packet') });
    expect(read({ takeSeed: 'on', packetId: 'p' })).toMatchObject({ takes: true, packetId: 'p' });
    expect(read({ packetId: 'p' })).toMatchObject({ takes: false, packetId: 'p' });
  });

  it('is not taken again where it was taken out before', () => {
    expect(read({ takeSeed: 'on', withdrawalId: 'm' })).toMatchObject({ takes: false, withdrawalId: 'm' });
  });

  it('left over in a tray comes from no packet, whatever else is said', () => {
    const fromTray = read({ trayId: 't', takeSeed: 'on', packetId: 'p', withdrawalId: 'm' });
    expect(fromTray).toMatchObject({ trayId: 't', takes: false });
    expect(fromTray.packetId).toBeUndefined();
    expect(fromTray.withdrawalId).toBeUndefined();
  });

  it('of a correction went out the first time', () => {
    const correction = { correctsId: 'v', correctionReason: 'miscounted', takeSeed: 'on', withdrawalId: 'm' };
    expect(read({ ...correction, packetId: 'p' })).toMatchObject({ takes: false, packetId: 'p' });
    expect(read(correction).withdrawalId).toBeUndefined();
  });
});

it('a correction says why', () => {
  expect(complaints({ correctsId: 'v' })).toEqual({ correctionReason: expect.stringContaining('what was wrong') });
});

it('kind and day are asked for, and the day has been', () => {
  expect(complaints({ kind: 'float' }).kind).toContain('Choose the test');
  expect(complaints({ testedOn: '2026-11-26' }).testedOn).toContain('after today');
  expect(complaints({ testedOn: '' }).testedOn).toBeDefined();
});

it('the address of the form leaves out what it cannot read', () => {
  expect(newViabilityTestQuery.parse({ kind: 'float', lot: ['L-1', 'L-2'] })).toMatchObject({
    kind: 'tetrazolium',
    lot: 'L-1',
  });
  expect(newViabilityTestQuery.parse({ kind: 'cut', tray: 'T-0001' })).toMatchObject({ kind: 'cut', tray: 'T-0001' });
});
