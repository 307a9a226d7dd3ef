import { describe, expect, test } from 'vitest';
import { runOfAddress } from '@/app/_components/labels/run-of-address';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';

const read = (address: Record<string, string>, packets = 1) => runOfAddress(address, COMMON_FORMATS, packets);

describe('how labels are printed, as an address says it', () => {
  test('what it leaves out is as usual', () => {
    expect(read({}).asked).toMatchObject({
      format: { key: 'a4-24', code: 'qr' },
      run: { start: 1, copies: 1, shiftXMm: 0, shiftYMm: 0 },
    });
  });

  test('a code that is asked for replaces the format’s own', () => {
    expect(read({ code: 'data-matrix' }).asked?.format.code).toBe('data-matrix');
  });

  test('the start must lie on the sheet', () => {
    expect(read({ start: '24' }).asked).not.toBeNull();
    expect(read({ start: '25' }).question.errors.start).toMatch(/24 labels/);
    expect(read({ format: 'roll-50x25', start: '2' }).question.errors.start).toMatch(/roll begins at label 1/);
  });

  test('two thousand labels are one run, more are refused beside the copies', () => {
    expect(read({ copies: '100' }, 20).asked).not.toBeNull();
    expect(read({ copies: '100' }, 21).question.errors.copies).toMatch(/2100 labels. Print at most 2000/);
  });

  test('nonsense is refused beside its field and keeps what was typed', () => {
    const { question, asked } = read({ format: 'gone', copies: 'x', shiftX: '50' });
    expect(asked).toBeNull();
    expect(Object.keys(question.errors).sort()).toEqual(['copies', 'format', 'shiftX']);
    expect(question.typed).toMatchObject({ copies: 'x', shiftX: '50' });
  });
});
