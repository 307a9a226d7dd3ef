import { describe, expect, it } from 'vitest';
import {
  careDoneInWords,
  careDueInWords,
  containerLabel,
  desiccantInWords,
  pathInWords,
  sealInWords,
} from '@/app/_format/packet-words';

const nothing = { sealedSince: null, openSince: null, desiccant: null };

describe('a packet in words', () => {
  it('lies where the stores around it say, or nobody knows', () => {
    expect(pathInWords({ steps: [{ name: 'Freezer A' }, { name: 'Shelf 2' }] })).toBe('Freezer A › Shelf 2');
    expect(pathInWords(null)).toBe('nobody wrote down where');
  });

  it('is sealed, open, or in what cannot be sealed', () => {
    expect(sealInWords('glass-jar', { ...nothing, sealedSince: '2024-03-02' })).toBe('sealed since 2 Mar 2024');
    expect(sealInWords('glass-jar', { ...nothing, openSince: '2024-03-02' })).toBe('open since 2 Mar 2024');
    expect(sealInWords('glass-jar', nothing)).toBeNull();
    expect(sealInWords('paper-envelope', nothing)).toBe('lets air in');
    expect(containerLabel('a-kind-of-old')).toBe('a-kind-of-old');
  });

  it('has a desiccant with what is known of it', () => {
    const desiccant = { key: 'silica-gel', grams: 5, since: '2026-03-02', changeDueOn: '2026-09-02' };
    expect(desiccantInWords({ ...nothing, desiccant })).toBe('silica gel without indicator, 5 g, since 2 Mar 2026');
    expect(desiccantInWords({ ...nothing, desiccant: { ...desiccant, grams: null } })).toBe(
      'silica gel without indicator, since 2 Mar 2026',
    );
    expect(desiccantInWords(nothing)).toBeNull();
  });

  it('wants what is due', () => {
    expect(careDueInWords({ what: 'seal', on: '2026-11-03' })).toBe('seal it: open since 3 Nov 2026');
    expect(careDueInWords({ what: 'desiccant', on: '2027-03-02' })).toBe('change the desiccant by 2 Mar 2027');
    expect(careDueInWords(null)).toBeNull();
  });

  it('tells what was done to it', () => {
    const line = { what: 'desiccant', desiccant: 'dried-rice', desiccantGrams: 30, changeDueOn: '2027-02-23' };
    expect(careDoneInWords(line)).toBe('oven-dried rice put in, 30 g, to be changed by 23 Feb 2027');
    expect(careDoneInWords({ ...line, desiccant: null })).toBe('desiccant taken out');
    expect(careDoneInWords({ ...line, what: 'sealed' })).toBe('sealed');
  });
});
