import type { CodeMatrix } from './code-size';

/** Dark squares side by side, as one strip: `squares` wide and one high, from square (x, y). */
export interface DarkRun {
  x: number;
  y: number;
  squares: number;
}

/**
 * A code as strips: fewer shapes to draw, and no hairline between neighbours where a printer rounds edges.
 *
 * @returns strips from the upper left, row by row
 * Checked in tests/domain/labels/dark-runs.test.ts
 */
export function darkRuns({ rows }: CodeMatrix): DarkRun[] {
  return rows.flatMap((row, y) => {
    const runs: DarkRun[] = [];
    for (let x = 0; x < row.length; x++) {
      if (!row[x]) continue;
      const last = runs.at(-1);
      if (last && last.x + last.squares === x) last.squares += 1;
      else runs.push({ x, y, squares: 1 });
    }
    return runs;
  });
}
