import { describe, expect, it } from 'vitest';
import { recipientKindLabel } from '@/lib/domain/stock/recipient-kinds';
import { type SharingLineFacts, sharingHindrance } from '@/lib/domain/stock/sharing-hindrance';
import { sharingLabel } from '@/lib/domain/stock/sharing-terms';

/** 1000 seeds in an active packet, of which 500 must be kept: 500 can go. */
const line = (overrides: Partial<SharingLineFacts> = {}): SharingLineFacts => ({
  sharing: 'may',
  own: { active: 1000, base: 0 },
  forRegrowing: 300,
  packet: { number: 'P-00001', role: 'active', seeds: 1000 },
  seeds: 50,
  otherSeedsOfLot: 0,
  otherSeedsOfPacket: 0,
  ...overrides,
});

describe('sharingHindrance', () => {
  it('lets go what can be spared, to the last seed', () => {
    expect(sharingHindrance(line())).toBeNull();
    expect(sharingHindrance(line({ sharing: 'with-terms' }))).toBeNull();
    expect(sharingHindrance(line({ seeds: 500 }))).toBeNull();
    expect(sharingHindrance(line({ seeds: 501 }))).toEqual({
      kind: 'too-little-kept',
      sentence:
        "Only 500 seeds can be spared: of 1000 in the bank's own packets, 300 are kept for 2 regrowings and 200 for tests.",
      mayBeOverruled: true,
    });
  });

  it('refuses an accession that may not be shared, whoever asks and however much there is', () => {
    expect(sharingHindrance(line({ sharing: 'not' }))).toMatchObject({
      kind: 'not-to-be-shared',
      mayBeOverruled: false,
    });
  });

  it('asks for packet and seeds', () => {
    expect(sharingHindrance(line({ packet: null }))?.kind).toBe('nothing-chosen');
    expect(sharingHindrance(line({ seeds: null }))?.kind).toBe('nothing-chosen');
  });

  it('draws from active stock only', () => {
    for (const role of ['base', 'safety-duplicate'] as const) {
      const packet = { number: 'P-00002', role, seeds: 1000 };
      expect(sharingHindrance(line({ packet }))).toMatchObject({
        kind: 'packet-not-drawn-from',
        mayBeOverruled: false,
      });
    }
  });

  it('takes no more from a packet than it holds, other lines of the request counted', () => {
    const packet = { number: 'P-00001', role: 'active', seeds: 60 } as const;
    expect(sharingHindrance(line({ packet, seeds: 60 }))).toBeNull();
    expect(sharingHindrance(line({ packet, seeds: 61 }))).toMatchObject({
      kind: 'packet-too-small',
      mayBeOverruled: false,
    });
    const refused = sharingHindrance(line({ packet, seeds: 50, otherSeedsOfPacket: 20, otherSeedsOfLot: 20 }));
    expect(refused?.sentence).toContain('P-00001 holds 40 seeds for this line');
  });

  it('counts what other lines take from the same lot', () => {
    expect(sharingHindrance(line({ seeds: 50, otherSeedsOfLot: 450 }))).toBeNull();
    expect(sharingHindrance(line({ otherSeedsOfLot: 500 }))?.sentence).toContain('No seed can be spared');
    expect(sharingHindrance(line({ seeds: 51, otherSeedsOfLot: 450 }))?.sentence).toContain(
      'Only 50 seeds can be spared',
    );
  });

  it('leaves a lot that nobody can reckon with to a steward', () => {
    expect(sharingHindrance(line({ forRegrowing: null }))).toMatchObject({ kind: 'no-forecast', mayBeOverruled: true });
    const dead = sharingHindrance(line({ forRegrowing: Number.POSITIVE_INFINITY }));
    expect(dead).toMatchObject({ kind: 'may-be-dead', mayBeOverruled: true });
  });
});

describe('sharingLabel and recipientKindLabel', () => {
  it('says a choice in words, and shows what it does not know as it stands', () => {
    expect(['may', 'with-terms', 'not', 'odd'].map(sharingLabel)).toEqual([
      'may be shared',
      'may be shared on terms',
      'may not be shared',
      'odd',
    ]);
    expect(['bank', 'odd'].map(recipientKindLabel)).toEqual(['partner bank', 'odd']);
  });
});
