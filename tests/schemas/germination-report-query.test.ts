import { expect, it } from 'vitest';
import { germinationReportQuery } from '@/lib/schemas/germination-report-query';

const read = (address: Record<string, unknown>) => germinationReportQuery('2026-11-25').parse(address);

it('is of this year up to today when nothing is said', () => {
  expect(read({})).toEqual({ from: '2026-01-01', to: '2026-11-25', page: 1, whole: false });
});

it('fills in the other end of a period: the year of its last day, or today', () => {
  expect(read({ to: '2024-06-30' })).toMatchObject({ from: '2024-01-01', to: '2024-06-30' });
  expect(read({ from: '2023-05-01' })).toMatchObject({ from: '2023-05-01', to: '2026-11-25' });
  expect(read({ from: '2027-05-01' })).toMatchObject({ from: '2027-05-01', to: '2027-05-01' });
});

it('turns round a period that ends before it begins', () => {
  expect(read({ from: '2026-03-01', to: '2026-02-01' })).toMatchObject({ from: '2026-02-01', to: '2026-03-01' });
});

it('takes what cannot be read for not said', () => {
  expect(read({ from: '2026-02-30', to: ['2026-06-30', 'x'], page: '-4', whole: 'no' })).toEqual({
    ...{ from: '2026-01-01', to: '2026-06-30', page: 1, whole: false },
  });
  expect(read({ whole: 'yes', page: '7' })).toMatchObject({ whole: true, page: 7 });
});
