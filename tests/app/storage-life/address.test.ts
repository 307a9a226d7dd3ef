import { describe, expect, it } from 'vitest';
import { storageLifePath } from '@/app/_format/storage-life-path';
import { completeAddress, exampleFor, ownParameter } from '@/app/(bank)/reference/storage-life/_parts/complete-address';
import { moistureInStore } from '@/app/(bank)/reference/storage-life/_parts/store-air';

const example = exampleFor([
  { id: 'onion', own: false, published: true },
  { id: 'barley', own: true, published: false },
  { id: 'maize', own: true, published: true },
]);
const fridge = { name: 'Fridge', targetTemperatureC: 4, targetRelativeHumidity: 0.35 };
const freezer = { name: 'Freezer', targetTemperatureC: -18, targetRelativeHumidity: null };

describe('the address of the map of storage life', () => {
  it('shows a crop with published constants of its own as the example, and leaves an empty address empty', () => {
    expect(example.crop).toBe('maize');
    expect(completeAddress({}, example, null, null)).toEqual({});
    expect(completeAddress({ page: '2' }, example, null, null)).toEqual({ page: '2' });
  });

  it('is filled in from a store: its temperature, and the moisture of open seed in its air', () => {
    const address = completeAddress({ store: 'f' }, example, fridge, null);
    expect(address).toMatchObject({ store: 'f', crop: 'maize', temperature: '4', wanted: '85' });
    expect(Number(address.moisture)).toBeCloseTo(moistureInStore(fridge, 0) ?? 0, 1);
  });

  it('takes the example’s moisture where the store’s humidity is not known', () => {
    expect(moistureInStore(freezer, 0)).toBeNull();
    expect(completeAddress({ store: 'f' }, example, freezer, null)).toMatchObject({
      temperature: '-18',
      moisture: '9',
    });
  });

  it('keeps what was asked, and what was left blank in the form', () => {
    const asked = { store: 'f', moisture: '7', temperature: '' };
    expect(completeAddress(asked, example, fridge, null)).toMatchObject({ moisture: '7', temperature: '' });
  });

  it('puts no crop beside constants that were asked about alone', () => {
    expect(completeAddress({ constants: 'onion' }, example, null, null)).not.toHaveProperty('crop');
  });

  it('reads a parameter given twice as the first, and blanks as none', () => {
    expect(ownParameter({ crop: ['leek', 'onion'] }, 'crop')).toBe('leek');
    expect(ownParameter({ crop: ' ' }, 'crop')).toBeUndefined();
    expect(ownParameter({}, 'crop')).toBeUndefined();
  });

  it('is written with figures rounded to a tenth and nothing that is not known', () => {
    expect(storageLifePath({ crop: 'leek', moisture: 8.46, temperature: -18, initial: undefined })).toBe(
      '/reference/storage-life?crop=leek&moisture=8.5&temperature=-18',
    );
  });
});
