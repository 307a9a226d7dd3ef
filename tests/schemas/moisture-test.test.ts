import { describe, expect, it } from 'vitest';
import { moistureTestInput } from '../../lib/schemas/moisture-test';

const schema = moistureTestInput('2026-11-25');
const dish = (overrides: object = {}) => ({
  dishG: '20,114',
  dishAndFreshG: '25.236',
  dishAndDryG: '24.821',
  beforePreDryingG: '',
  afterPreDryingG: '',
  ...overrides,
});
const oven = (overrides: object = {}) => ({
  lot: 'L-2020-001',
  testedOn: '2026-11-20',
  method: 'oven-low',
  dishes: [dish(), dish()],
  ...overrides,
});
const messages = (input: object) => {
  const parsed = schema.safeParse(input);
  return Object.fromEntries((parsed.error?.issues ?? []).map((issue) => [issue.path.join('.'), issue.message]));
};

describe('an oven test', () => {
  it('takes dishes with decimal comma or point, and leaves out those in which nothing was written', () => {
    const blank = { dishG: '', dishAndFreshG: ' ', dishAndDryG: '', beforePreDryingG: '', afterPreDryingG: '' };
    const parsed = schema.parse(oven({ dishes: [dish(), blank, dish()] }));
    expect(parsed.dishes).toHaveLength(2);
    expect(parsed.dishes[0]).toEqual({
      dishG: 20.114,
      dishAndFreshG: 25.236,
      dishAndDryG: 24.821,
      beforePreDryingG: null,
      afterPreDryingG: null,
    });
  });

  it('needs two dishes, and says so beside the second', () => {
    expect(messages(oven({ dishes: [dish()] }))).toEqual({ 'dishes.1.dishG': expect.stringContaining('Two dishes') });
    expect(messages(oven({ dishes: undefined }))).toEqual({ 'dishes.0.dishG': expect.stringContaining('Two dishes') });
  });

  it('says beside the weight what cannot be', () => {
    const of = (row: object) => messages(oven({ dishes: [dish(), dish(row)] }));
    expect(of({ dishAndFreshG: '20' })).toEqual({
      'dishes.1.dishAndFreshG': expect.stringContaining('more than empty'),
    });
    expect(of({ dishAndDryG: '26' })).toEqual({ 'dishes.1.dishAndDryG': expect.stringContaining('cannot weigh more') });
    expect(of({ dishAndDryG: '20.114' })).toEqual({ 'dishes.1.dishAndDryG': expect.stringContaining('empty dish') });
    expect(of({ beforePreDryingG: '60' })).toEqual({
      'dishes.1.afterPreDryingG': expect.stringContaining('both weights'),
    });
    expect(of({ beforePreDryingG: '60', afterPreDryingG: '61' })).toEqual({
      'dishes.1.afterPreDryingG': expect.stringContaining('heavier'),
    });
    expect(of({ dishG: '' })).toEqual({ 'dishes.1.dishG': 'Fill this in.' });
  });

  it('uses the fresh seed of the dishes unless another amount is written; pre-dried seed counts whole', () => {
    const taking = { packetId: 'p', takeSeed: 'on' };
    expect(schema.parse(oven(taking)).used).toEqual({ amount: 10.244, unit: 'grams' });
    const predried = dish({ beforePreDryingG: '60', afterPreDryingG: '55' });
    expect(schema.parse(oven({ ...taking, dishes: [dish(), predried] })).used?.amount).toBeCloseTo(65.122, 9);
    expect(schema.parse(oven({ ...taking, amount: '900', unit: 'seeds' })).used).toEqual({
      amount: 900,
      unit: 'seeds',
    });
    expect(schema.parse(oven({ packetId: 'p' })).used).toBeNull();
    expect(messages(oven({ takeSeed: 'on' }))).toEqual({ packetId: expect.stringContaining('Choose the packet') });
    expect(messages(oven({ ...taking, amount: '1.5', unit: 'seeds' }))).toEqual({
      amount: expect.stringContaining('whole number'),
    });
  });
});

describe('the other ways', () => {
  it('a meter needs its percent, and nothing else comes through', () => {
    const meter = { ...oven(), method: 'meter', moisturePercent: '7,9', humidityPercent: '40', temperatureC: '20' };
    expect(schema.parse(meter)).toMatchObject({ moisturePercent: 7.9, dishes: [], air: undefined });
    expect(messages({ ...meter, moisturePercent: '' })).toEqual({
      moisturePercent: expect.stringContaining('meter shows'),
    });
  });

  it('air needs humidity and temperature, within what the equation bears', () => {
    const air = { ...oven(), method: 'air', humidityPercent: '35', temperatureC: '20' };
    expect(schema.parse(air)).toMatchObject({ air: { relativeHumidity: 0.35, temperatureC: 20 }, dishes: [] });
    expect(messages({ ...air, humidityPercent: '96' })).toHaveProperty('humidityPercent');
    expect(Object.keys(messages({ ...air, humidityPercent: '', temperatureC: '' })).sort()).toEqual([
      'humidityPercent',
      'temperatureC',
    ]);
    // where seed was used up all the same, nothing tells how much
    expect(messages({ ...air, packetId: 'p', takeSeed: 'on' })).toEqual({
      amount: expect.stringContaining('how much'),
    });
  });

  it('a correction says what was wrong, and takes no seed out again', () => {
    const correction = oven({ correctsId: 'm', takeSeed: 'on', packetId: 'p' });
    expect(messages(correction)).toEqual({ correctionReason: expect.stringContaining('what was wrong') });
    expect(schema.parse({ ...correction, correctionReason: 'slip' }).used).toBeNull();
  });

  it('is not dated ahead, and names a method that exists', () => {
    expect(messages(oven({ testedOn: '2026-11-26' }))).toEqual({ testedOn: expect.stringContaining('after today') });
    expect(messages(oven({ method: 'tongue' }))).toHaveProperty('method');
  });
});
