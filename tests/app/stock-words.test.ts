import { describe, expect, it } from 'vitest';
import { duplicateWarning, type PacketInWords, stockInWords } from '@/app/_format/stock-words';

const packet = (role: string, path: string[], overrides: Partial<PacketInWords> = {}): PacketInWords => ({
  role,
  seeds: 100,
  place: { steps: path.map((name) => ({ id: name, name })), atPartnerBank: false },
  ...overrides,
});
const atPartner = { place: { steps: [{ id: 'x', name: 'Across the sound' }], atPartnerBank: true } };

describe('what lies where', () => {
  it('is told by purpose, each place once', () => {
    expect(
      stockInWords([
        packet('base', ['Freezer A', 'Shelf 2']),
        packet('active', ['Fridge']),
        packet('active', ['Fridge']),
        packet('active', ['Pantry']),
        packet('safety-duplicate', [], atPartner),
      ]),
    ).toBe(
      'Active stock in Fridge and in Pantry; base stock in Freezer A › Shelf 2; safety duplicate in Across the sound (held elsewhere).',
    );
  });

  it('leaves out what is empty, and says nothing where nothing is left', () => {
    expect(stockInWords([packet('active', ['Fridge']), packet('base', ['Freezer'], { seeds: 0 })])).toBe(
      'Active stock in Fridge.',
    );
    expect(stockInWords([packet('active', ['Fridge'], { seeds: 0 })])).toBeNull();
    expect(stockInWords([packet('active', [], { place: null })])).toBe(
      'Active stock in a place that nobody wrote down.',
    );
  });
});

describe('the safety duplicate', () => {
  const active = packet('active', ['House', 'Fridge']);

  it('is missed where there is seed and none of it is one', () => {
    expect(duplicateWarning([active, packet('base', ['Freezer'])])).toContain('No safety duplicate');
    expect(duplicateWarning([active, packet('safety-duplicate', [], { ...atPartner, seeds: 0 })])).toContain(
      'No safety',
    );
    expect(duplicateWarning([packet('active', ['House'], { seeds: 0 })])).toBeNull();
  });

  it('is none in the same freezer, room or house as the rest', () => {
    const beside = packet('safety-duplicate', ['House', 'Freezer']);
    expect(duplicateWarning([active, beside])).toContain('would be lost with it');
    expect(duplicateWarning([active, packet('safety-duplicate', ['Church'])])).toBeNull();
    expect(duplicateWarning([active, beside, packet('safety-duplicate', [], atPartner)])).toBeNull();
  });
});
