import { expect, test } from 'vitest';
import { germinationByDishesSchema } from '../../lib/schemas/calculators/germination-by-dishes';

const errors = (typed: Record<string, string>) =>
  Object.fromEntries(
    (germinationByDishesSchema.safeParse(typed).error?.issues ?? []).map(({ path, message }) => [path[0], message]),
  );

test('reads a row of counts', () => {
  expect(germinationByDishesSchema.parse({ dishes: '46, 44, 49, 41', seedsADish: '50' })).toMatchObject({
    dishes: [46, 44, 49, 41],
    seedsADish: 50,
  });
});

test('a dish cannot give more seedlings than it has seeds', () => {
  expect(errors({ dishes: '50 50', seedsADish: '50' })).toEqual({});
  expect(errors({ dishes: '50 51', seedsADish: '50' }).dishes).toMatch(/51 grew in a dish of 50/);
});

test('another test comes with both its figures or not at all', () => {
  const dishes = { dishes: '46 44', seedsADish: '50' };
  expect(errors({ ...dishes, otherGrew: '40' }).otherSeeds).toMatch(/both/);
  expect(errors({ ...dishes, otherSeeds: '50' }).otherGrew).toMatch(/both/);
  expect(errors({ ...dishes, otherGrew: '51', otherSeeds: '50' }).otherGrew).toMatch(/More seeds/);
  expect(errors({ ...dishes, otherGrew: '0', otherSeeds: '50' })).toEqual({});
});
