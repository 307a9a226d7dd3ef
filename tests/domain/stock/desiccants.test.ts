import { describe, expect, it } from 'vitest';
import { CAUTIONS } from '@/lib/domain/reference/cautions';
import { DESICCANTS, type DesiccantKey, desiccantDueOn, findDesiccant } from '@/lib/domain/stock/desiccants';

describe('desiccants', () => {
  it('says when to look at each next: sooner where nothing shows that it is spent', () => {
    expect(desiccantDueOn('silica-gel-blue', '2026-11-25')).toBe('2027-11-25');
    expect(desiccantDueOn('silica-gel', '2026-11-25')).toBe('2027-05-24');
    expect(desiccantDueOn('dried-rice', '2026-11-25')).toBe('2027-02-23');
  });

  it('refuses a kind that does not exist, by its name', () => {
    expect(() => desiccantDueOn('chalk' as DesiccantKey, '2026-11-25')).toThrow(/got chalk/);
    expect(findDesiccant('chalk')).toBeNull();
    expect(findDesiccant(null)).toBeNull();
  });

  it('warns of cobalt in blue gel, and of nothing that is not a caution', () => {
    expect(findDesiccant('silica-gel-blue')?.cautions).toEqual(['cobalt-silica-gel']);
    const known = CAUTIONS.map(({ key }) => key);
    for (const { cautions } of DESICCANTS) for (const key of cautions) expect(known).toContain(key);
  });
});
