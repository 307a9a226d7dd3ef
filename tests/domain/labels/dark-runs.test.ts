import fc from 'fast-check';
import { expect, test } from 'vitest';
import { darkRuns } from '@/lib/domain/labels/dark-runs';

test('strips cover exactly the dark squares, each once, and no two touch side by side', () => {
  const matrix = fc.array(fc.array(fc.boolean(), { minLength: 6, maxLength: 6 }), { minLength: 6, maxLength: 6 });
  fc.assert(
    fc.property(matrix, (rows) => {
      const drawn = rows.map((row) => row.map(() => 0));
      const runs = darkRuns({ kind: 'qr', rows });
      for (const { x, y, squares } of runs) {
        for (let at = x; at < x + squares; at++) (drawn[y] as number[])[at] = (drawn[y]?.[at] ?? 0) + 1;
        expect(rows[y]?.[x + squares] ?? false).toBe(false);
        expect(rows[y]?.[x - 1] ?? false).toBe(false);
      }
      expect(drawn).toEqual(rows.map((row) => row.map(Number)));
    }),
  );
});
