import { describe, expect, it } from 'vitest';
import { columnChoice } from '@/lib/schemas/import/column-choice';

describe('the columns chosen in an address', () => {
  it('are read by field, blank as not in this file', () => {
    expect(columnChoice({ 'column.number': '0', 'column.crop': '3', 'column.donor': '', other: 'x' })).toEqual({
      number: 0,
      crop: 3,
      donor: null,
    });
  });

  it('are none when nobody has chosen', () => {
    expect(columnChoice({})).toBeNull();
    expect(columnChoice({ imported: '3' })).toBeNull();
  });

  it('are none when they cannot be read', () => {
    expect(columnChoice({ 'column.number': 'first' })).toBeNull();
    expect(columnChoice({ 'column.number': '-1' })).toBeNull();
    expect(columnChoice({ 'column.number': ['1', '2'] })).toBeNull();
  });
});
