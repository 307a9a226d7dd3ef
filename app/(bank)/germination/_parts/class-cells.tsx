import clsx from 'clsx';
import { SEED_CLASSES } from '@/lib/domain/germination/seed-classes';

/** Columns of figures in a table with a replicate a row. */
export const CLASS_COLUMNS = ['seeds', ...SEED_CLASSES] as const;

interface Props {
  /** seeds or percent */
  of: Readonly<Record<(typeof CLASS_COLUMNS)[number], number>>;
  className: string;
}

/** A row's cells in these columns. */
export function ClassCells({ of, className }: Props) {
  return CLASS_COLUMNS.map((column) => (
    <td key={column} className={clsx('number', className)}>
      {of[column]}
    </td>
  ));
}
