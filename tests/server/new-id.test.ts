import { describe, expect, it } from 'vitest';
import { newId, newIdAfter } from '@/lib/server/new-id';

describe('ids', () => {
  it('keep the order in which they were made, within a millisecond and when the clock is set back', () => {
    const now = Date.UTC(2099, 0, 1);
    const ids = [...Array.from({ length: 10_000 }, () => newId(now)), newId(now - 60_000), newId(now + 60_000)];
    expect([...ids].sort()).toEqual(ids);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('come after what they replace, also when a phone of the future made it, and do not follow it from then on', () => {
    const now = Date.now();
    const future = 'ffff0000-0000-7000-8000-000000000000';
    const after = newIdAfter(['019a0000-0000-7000-8000-000000000000', future], now);
    expect(after > future).toBe(true);
    expect(newId(now) < future).toBe(true);
    expect(newIdAfter([], now) < future).toBe(true);
  });

  it('are UUIDs of version 7', () => {
    expect(newId()).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });
});
