import { describe, expect, it } from 'vitest';
import { CROPS } from '@/lib/domain/reference/all-crops';
import { OTHER_CROP_NAMES } from '@/lib/domain/reference/other-names';

describe('other names of crops', () => {
  const names = new Set(CROPS.map((crop) => crop.name));

  it('belong to crops of the reference', () => {
    expect(Object.keys(OTHER_CROP_NAMES).filter((name) => !names.has(name))).toEqual([]);
  });

  it('mean one crop only', () => {
    const others = Object.values(OTHER_CROP_NAMES)
      .flat()
      .map((name) => name.toLowerCase());
    expect(others.filter((name, index) => others.indexOf(name) !== index)).toEqual([]);
    expect(
      Object.values(OTHER_CROP_NAMES)
        .flat()
        .filter((name) => names.has(name)),
    ).toEqual([]);
  });
});
