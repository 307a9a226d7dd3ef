import { describe, expect, it } from 'vitest';
import { isUuidV7, uuidV7 } from '@/lib/domain/ids/uuid-v7';

const FULL = new Uint8Array(8).fill(0xff);
const EMPTY = new Uint8Array(8);

describe('ids that sort by when they were made', () => {
  it('agree with the example of RFC 9562, appendix A.6', () => {
    // Its twelve bits after the version are chance (0xcc3); here they count, so the rest of it is compared.
    const id = uuidV7({
      now: 0x017f22e279b0,
      after: null,
      random: Uint8Array.from([0x18, 0xc4, 0xdc, 0x0c, 0x0c, 0x07, 0x39, 0x8f]),
    });
    expect(id).toBe('017f22e2-79b0-7000-98c4-dc0c0c07398f');
    expect('017f22e2-79b0-7cc3-98c4-dc0c0c07398f'.slice(19)).toBe(id.slice(19));
  });

  it('have version 7 and variant 10 whatever the chance', () => {
    for (const random of [FULL, EMPTY]) expect(isUuidV7(uuidV7({ now: 1, after: null, random }))).toBe(true);
    expect(isUuidV7('017f22e2-79b0-4cc3-98c4-dc0c0c07398f')).toBe(false);
    expect(isUuidV7('017f22e2-79b0-7cc3-c8c4-dc0c0c07398f')).toBe(false);
    expect(isUuidV7(null)).toBe(false);
  });

  it('lie above the highest seen, also when that came from a clock that runs ahead', () => {
    const ahead = uuidV7({ now: Date.UTC(2099, 0, 1), after: null, random: FULL });
    const next = uuidV7({ now: Date.UTC(2026, 10, 25), after: ahead, random: EMPTY });
    expect(next > ahead).toBe(true);
    expect(next.slice(0, 13)).toBe(ahead.slice(0, 13));
  });

  it('take the next millisecond when the count within one runs out', () => {
    const last = '017f22e2-79b0-7fff-bfff-ffffffffffff';
    expect(uuidV7({ now: 0x017f22e279b0, after: last, random: EMPTY })).toBe('017f22e2-79b1-7000-8000-000000000000');
    expect(uuidV7({ now: 0x017f22e279b1, after: last, random: EMPTY })).toBe('017f22e2-79b1-7000-8000-000000000000');
  });

  it('refuse what no clock or phone can say', () => {
    expect(() => uuidV7({ now: Number.NaN, after: null, random: EMPTY })).toThrow(RangeError);
    expect(() => uuidV7({ now: 1, after: 'count 7', random: EMPTY })).toThrow(RangeError);
    expect(() => uuidV7({ now: 1, after: 'ffffffff-ffff-7fff-bfff-ffffffffffff', random: EMPTY })).toThrow(RangeError);
  });
});
