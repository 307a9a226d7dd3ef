import { expect, it } from 'vitest';
import { usualTolerance } from '@/lib/domain/stock/climate-tolerance';
import { STORE_KIND_KEYS } from '@/lib/domain/stock/store-kinds';

it('takes for a box on a shelf the tolerance of the fridge that they stand in', () => {
  expect(usualTolerance(['box', 'shelf', 'fridge', 'room'])).toEqual(usualTolerance(['fridge']));
  expect(usualTolerance(['fridge'])).not.toEqual(usualTolerance(['room']));
});

it('has one for every kind of store, wide enough that a target is never outside its own band', () => {
  for (const kind of [...STORE_KIND_KEYS, 'constructor']) {
    expect(usualTolerance([kind]).temperatureC).toBeGreaterThan(0);
    expect(usualTolerance([kind]).relativeHumidity).toBeGreaterThan(0);
  }
});
