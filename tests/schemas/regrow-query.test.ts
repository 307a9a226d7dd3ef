import { describe, expect, it } from 'vitest';
import { regrowQuerySchema } from '@/lib/schemas/regrow-query';

describe('the address of the regrow list', () => {
  it('takes the blanks of a form as no filter', () => {
    expect(regrowQuerySchema.parse({ q: 'leek', crop: '', season: '', action: '' })).toEqual({ q: 'leek', page: 1 });
  });

  it('reads every filter', () => {
    const query = { q: 'leek', crop: 'c1', season: '2027', action: 'test-first', page: '3', print: 'all' };
    expect(regrowQuerySchema.parse(query)).toEqual({ ...query, season: 2027, page: 3 });
  });

  it('leaves out what it cannot read', () => {
    expect(regrowQuerySchema.parse({ season: 'soon', action: 'panic', page: '-4', print: 'some' })).toEqual({
      page: 1,
    });
  });
});
