import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import * as fields from '../../lib/schemas/field-schemas';

const messageOf = (schema: z.ZodType, value: unknown) => {
  const result = schema.safeParse(value);
  return result.success ? `accepted ${JSON.stringify(result.data)}` : result.error.issues[0]?.message;
};

describe('blank values', () => {
  test('a blank box is missing, never 0', () => {
    for (const blank of ['', '   ', '\u00a0', null, undefined]) {
      expect(messageOf(fields.positiveWeightG, blank)).toBe('Fill this in.');
      expect(messageOf(fields.seedCount, blank)).toBe('Fill this in.');
      expect(messageOf(fields.shortText, blank)).toBe('Fill this in.');
      expect(messageOf(fields.calendarDate, blank)).toBe('Fill this in.');
      expect(fields.optionalField(fields.seedCount).parse(blank)).toBeUndefined();
    }
  });

  test('an optional field may be missing from a form, and is still checked when filled', () => {
    const form = z.object({ weight: fields.optionalField(fields.positiveWeightG), name: fields.shortText });
    expect(form.parse({ name: 'Anna' })).toEqual({ name: 'Anna' });
    expect(form.parse({ name: 'Anna', weight: '' })).toEqual({ name: 'Anna', weight: undefined });
    expect(form.safeParse({ name: 'Anna', weight: '-1' }).success).toBe(false);
    expect(form.safeParse({ weight: '1' }).success).toBe(false);
  });
});

describe('numbers in forms', () => {
  test('decimal comma and decimal point mean the same', () => {
    expect(fields.positiveWeightG.parse('4,5')).toBe(4.5);
    expect(fields.positiveWeightG.parse('4.5')).toBe(4.5);
    expect(fields.positiveWeightG.parse('1.200,5')).toBe(1200.5);
    expect(fields.positiveWeightG.parse('1 200')).toBe(1200);
    expect(fields.positiveWeightG.parse(4.5)).toBe(4.5);
  });

  test('a point is always decimal, as number boxes send it', () => {
    expect(fields.positiveWeightG.parse('1.200')).toBe(1.2);
  });

  test('a comma before three digits is refused with both readings', () => {
    expect(messageOf(fields.positiveWeightG, '1,200')).toBe(
      'This could be 1200 or 1.2: write one of these, without a comma.',
    );
    expect(fields.positiveWeightG.parse('0,125')).toBe(0.125);
  });

  test('a unit other than its own is not swallowed', () => {
    expect(fields.positiveWeightG.parse('2 g')).toBe(2);
    expect(fields.positiveWeightG.safeParse('2 %').success).toBe(false);
    expect(messageOf(fields.positiveWeightG, '2 kg')).toBe('Write a number, such as 12 or 4.5.');
    expect(fields.percent.parse('85 %')).toBe(85);
  });

  test('limits are inclusive on both sides', () => {
    expect(fields.moisturePercent.parse('0.5')).toBe(0.5);
    expect(fields.moisturePercent.parse('60')).toBe(60);
    expect(messageOf(fields.moisturePercent, '0.49')).toBe('Write a number between 0.5 and 60 %.');
    expect(messageOf(fields.moisturePercent, '60.01')).toBe('Write a number between 0.5 and 60 %.');
    expect(fields.thousandSeedWeightG.safeParse('0.005').success).toBe(true);
    expect(fields.thousandSeedWeightG.safeParse('0.0049').success).toBe(false);
    expect(fields.positiveWeightG.safeParse('100000').success).toBe(true);
    expect(fields.positiveWeightG.safeParse('100000.1').success).toBe(false);
    expect(fields.positiveWeightG.safeParse('0').success).toBe(false);
    expect(fields.seedCount.parse('0')).toBe(0);
    expect(fields.seedCount.parse('10000000')).toBe(10_000_000);
    expect(fields.seedCount.safeParse('10000001').success).toBe(false);
    expect(fields.positiveSeedCount.safeParse('0').success).toBe(false);
    expect(fields.plantCount.safeParse('100001').success).toBe(false);
  });

  test('counts are whole', () => {
    expect(messageOf(fields.seedCount, '12,5')).toBe('Write a whole number of seeds.');
    expect(fields.seedCount.parse('12.0')).toBe(12);
  });

  test('infinity and not-a-number are refused', () => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, 'NaN', 'Infinity', '1e999']) {
      expect(fields.positiveWeightG.safeParse(value).success).toBe(false);
    }
  });

  test('percent typed becomes a proportion where one is kept', () => {
    expect(fields.proportionFromPercent.parse('85')).toBe(0.85);
    expect(fields.proportion.safeParse('1.01').success).toBe(false);
  });
});

describe('dates', () => {
  test('a date must exist', () => {
    expect(fields.calendarDate.parse('2020-02-29')).toBe('2020-02-29');
    for (const wrong of ['2019-02-29', '2019-13-01', '31.12.2019', '2019-1-1']) {
      expect(messageOf(fields.calendarDate, wrong)).toBe('Write a date that exists, such as 2019-12-31.');
    }
    expect(fields.calendarDate.parse('1900-01-01')).toBe('1900-01-01');
    expect(messageOf(fields.calendarDate, '1899-12-31')).toBe('Write a date from 1900-01-01 on.');
  });

  test('something that has happened is not after today', () => {
    const schema = fields.pastOrTodayDate('2026-11-25');
    expect(schema.parse('2026-11-25')).toBe('2026-11-25');
    expect(messageOf(schema, '2026-11-26')).toBe('This date is after today (2026-11-25): check the year.');
    expect(() => fields.pastOrTodayDate('25.11.2026')).toThrow(RangeError);
  });
});

describe('text and label codes', () => {
  test('text is trimmed and limited', () => {
    expect(fields.shortText.parse('  Anna  ')).toBe('Anna');
    expect(fields.shortText.parse('x'.repeat(200))).toHaveLength(200);
    expect(messageOf(fields.shortText, 'x'.repeat(201))).toBe('Shorten this to 200 characters.');
    expect(fields.longText.safeParse('x'.repeat(5001)).success).toBe(false);
  });

  test('lot numbers hold letters, digits, space and - . / up to 40 characters', () => {
    for (const code of ['T-12/19.a', 'Ö 7', '2019  04', 'x'.repeat(40)]) {
      expect(fields.lotNumber.safeParse(code).success).toBe(true);
    }
    expect(fields.lotNumber.parse('2019  04')).toBe('2019 04');
    for (const code of ['=1+1', '-5', 'a_b', 'a\nb', 'x'.repeat(41), 'a;b']) {
      expect(fields.lotNumber.safeParse(code).success).toBe(false);
    }
  });
});
