import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { readQuestion } from '../../app/(bank)/reference/_parts/read-question';
import { countBetween, optionalField } from '../../lib/schemas/field-schemas';

const schema = z.object({
  seeds: countBetween({ min: 1, max: 400 }, 'seeds'),
  level: optionalField(z.enum(['90', '95'])),
});
const EXAMPLE = { seeds: '50', level: '95' };

describe('a calculator reads its question from the address', () => {
  it('works out the example when nothing was asked', () => {
    const question = readQuestion(schema, {}, EXAMPLE);
    expect(question).toMatchObject({ isExample: true, typed: EXAMPLE, input: { seeds: 50, level: '95' }, errors: {} });
  });

  it('does not mix the example into what was asked', () => {
    const question = readQuestion(schema, { seeds: '12' }, EXAMPLE);
    expect(question).toMatchObject({ isExample: false, typed: { seeds: '12' }, input: { seeds: 12 } });
    expect(question.input?.level).toBeUndefined();
  });

  it('keeps what was typed beside what is wrong with it', () => {
    const question = readQuestion(schema, { seeds: 'a dish', level: '95' }, EXAMPLE);
    expect(question.input).toBeNull();
    expect(question.typed.seeds).toBe('a dish');
    expect(question.errors).toEqual({ seeds: expect.stringContaining('number') });
  });

  it('counts the first of a parameter given twice', () => {
    expect(readQuestion(schema, { seeds: ['3', '4'] }, EXAMPLE).input?.seeds).toBe(3);
  });

  it('keeps parameters of other forms apart from its own', () => {
    const question = readQuestion(schema, { seeds: '3', oven: '103' }, EXAMPLE);
    expect(question.address).toEqual({ seeds: '3', oven: '103' });
    expect(question.typed).toEqual({ seeds: '3' });
    expect(question.fields).not.toContain('oven');
    expect(question.fields).toContain('seeds');
    expect(readQuestion(schema, { oven: '103' }, EXAMPLE).isExample).toBe(true);
  });
});
