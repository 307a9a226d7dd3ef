import type { TrayCount } from '@/lib/domain/germination/bench/tray-count';

/** A count as it was written down, with who did so and when. */
export interface WrittenCount extends TrayCount {
  deviceId: string;
  madeAt: Date;
  receivedAt: Date;
  /** who counted */
  byName: string;
}

interface CountRow {
  id: string;
  dishId: string;
  on: string;
  counted: boolean;
  normal: number;
  abnormal: number;
  hard: number;
  fresh: number;
  dead: number;
  replaces: string;
  deviceId: string;
  madeAt: Date;
  receivedAt: Date;
  byName: string;
  countedBy: string | null;
}

/** What a query of TrayCount must select for `writtenCount`. */
export const selectCount = {
  id: true,
  dishId: true,
  on: true,
  counted: true,
  normal: true,
  abnormal: true,
  hard: true,
  fresh: true,
  dead: true,
  replaces: true,
  deviceId: true,
  madeAt: true,
  receivedAt: true,
  byName: true,
  countedBy: true,
} as const;

/** A row of the table as the domain knows it. */
export function writtenCount(row: CountRow): WrittenCount {
  const { normal, abnormal, hard, fresh, dead } = row;
  return {
    id: row.id,
    dishId: row.dishId,
    on: row.on,
    found: row.counted ? { normal, abnormal, hard, fresh, dead } : null,
    replaces: JSON.parse(row.replaces) as string[],
    deviceId: row.deviceId,
    madeAt: row.madeAt,
    receivedAt: row.receivedAt,
    byName: row.countedBy ?? row.byName,
  };
}
