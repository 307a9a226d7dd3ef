import { describe, expect, it } from 'vitest';
import { CAUTION_PLACES, CAUTIONS, cautionsFor } from '../../../lib/domain/reference/cautions';

describe('cautions', () => {
  it('have unique keys, a full sentence, a source and a place', () => {
    expect(new Set(CAUTIONS.map(({ key }) => key)).size).toBe(CAUTIONS.length);
    for (const caution of CAUTIONS) {
      expect(caution.text, caution.key).toMatch(/^[A-Z].*\.$/);
      expect(caution.source.length, caution.key).toBeGreaterThan(15);
      expect(caution.where.length, caution.key).toBeGreaterThan(0);
    }
  });

  it('say so in the source when they are recalled, and give a section or address when published', () => {
    for (const caution of CAUTIONS) {
      if (caution.mark === 'from memory') expect(caution.source, caution.key).toMatch(/from memory/i);
      else if (caution.mark === 'common practice') expect(caution.source, caution.key).toMatch(/common practice/i);
      else expect(caution.source, caution.key).toMatch(/https?:|CFR/);
    }
  });

  it('cover every hazard that the product promises to name', () => {
    const words = CAUTIONS.map(({ text }) => text).join('\n');
    for (const hazard of [
      /Treated seed is not food/,
      /[Tt]etrazolium/,
      /never pipette by mouth/,
      /chemical waste/,
      /stained or cut is spent.*never sow, eat or feed it/,
      /Scalpels/,
      /water, never water into acid/,
      /Rules for chemicals, waste/,
      /bleach/,
      /acid/,
      /cobalt/,
      /dust/,
      /oven/,
      /never sow it/,
      /come to room temperature before you open/,
      /Freezing kills fresh or moist seed/,
      /poisonous/,
      /bitter squash/,
      /variety-protection law/,
      /one country's/,
    ]) {
      expect(words).toMatch(hazard);
    }
  });

  it('reach every place where they belong', () => {
    for (const place of CAUTION_PLACES) expect(cautionsFor(place).length, place).toBeGreaterThan(0);
    expect(cautionsFor('viability test').map(({ key }) => key)).toEqual([
      'laboratory-chemicals',
      'tetrazolium',
      'viability-sample-is-spent',
      'blades',
      'local-laboratory-rules',
      'bleach-and-acids',
    ]);
    expect(cautionsFor('moisture test').map(({ key }) => key)).toEqual(['oven-heat', 'oven-sample-is-dead']);
  });
});
