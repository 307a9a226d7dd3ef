import 'server-only';
import { COMMON_FORMATS, type NamedFormat } from '@/lib/domain/labels/common-formats';
import type { CodeKind, LabelKind } from '@/lib/domain/labels/label-format';
import { reader } from '../database/connections';

export interface OwnFormat extends NamedFormat {
  id: string;
  version: number;
}

/** The bank's own formats by name; the key that an address uses is their id. */
export async function findOwnFormats(): Promise<OwnFormat[]> {
  const rows = await reader().labelFormat.findMany({ orderBy: { name: 'asc' } });
  return rows.map(({ createdAt: _createdAt, byId: _byId, ...row }) => ({
    ...row,
    key: row.id,
    kind: row.kind as LabelKind,
    code: row.code as CodeKind,
  }));
}

/** Every format that labels can be printed on: the bank's own first. */
export async function findFormats(): Promise<NamedFormat[]> {
  return [...(await findOwnFormats()), ...COMMON_FORMATS];
}
