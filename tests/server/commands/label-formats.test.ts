import { describe, expect, it } from 'vitest';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { createLabelFormat } from '@/lib/server/commands/create-label-format';
import { deleteLabelFormat } from '@/lib/server/commands/delete-label-format';
import { updateLabelFormat } from '@/lib/server/commands/update-label-format';
import { reader } from '@/lib/server/database/connections';
import { findFormats, findOwnFormats } from '@/lib/server/queries/label-formats';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const jars = (overrides: Record<string, unknown> = {}) => ({
  name: 'Jars',
  kind: 'sheet',
  symbol: 'qr',
  labelWidthMm: '60',
  labelHeightMm: '40,5',
  columns: '3',
  rows: '7',
  ...overrides,
});

describe('label formats of the bank', () => {
  it('are completed: A4 unless said otherwise, no gaps unless a step is given', async () => {
    await createLabelFormat(STEWARD, jars());
    expect(await findOwnFormats()).toMatchObject([
      {
        ...{ name: 'Jars', kind: 'sheet', pageWidthMm: 210, pageHeightMm: 297, labelWidthMm: 60, labelHeightMm: 40.5 },
        ...{ columns: 3, rows: 7, marginLeftMm: 0, marginTopMm: 0, pitchXMm: 60, pitchYMm: 40.5, code: 'qr' },
      },
    ]);
  });

  it('of a roll have one label on a page of its size, whatever the sheet’s fields say', async () => {
    await createLabelFormat(STEWARD, jars({ kind: 'roll', symbol: 'data-matrix', pageWidthMm: '210' }));
    expect(await findOwnFormats()).toMatchObject([
      { kind: 'roll', pageWidthMm: 60, pageHeightMm: 40.5, columns: 1, rows: 1, code: 'data-matrix' },
    ]);
  });

  it('are offered before the common ones', async () => {
    await createLabelFormat(STEWARD, jars());
    const formats = await findFormats();
    expect(formats).toHaveLength(COMMON_FORMATS.length + 1);
    expect(formats[0]?.name).toBe('Jars');
  });

  it('that do not fit their page are refused beside the field, on adding and on changing', async () => {
    expect(await fieldMessage(createLabelFormat(STEWARD, jars({ columns: '4' })), 'columns')).toMatch(
      /reach to 240 mm/,
    );
    expect(await fieldMessage(createLabelFormat(STEWARD, jars({ pitchYMm: '40' })), 'pitchYMm')).toMatch(/overlap/);
    expect(await findOwnFormats()).toEqual([]);
    const { id } = await createLabelFormat(STEWARD, jars());
    const change = updateLabelFormat(STEWARD, { ...jars({ rows: '8' }), id, version: 1 });
    expect(await fieldMessage(change, 'rows')).toMatch(/page is 297 mm high/);
  });

  it('have names of their own', async () => {
    await createLabelFormat(STEWARD, jars());
    expect(await fieldMessage(createLabelFormat(STEWARD, jars()), 'name')).toMatch(/already/);
    const common = COMMON_FORMATS[0]?.name;
    expect(await fieldMessage(createLabelFormat(STEWARD, jars({ name: common })), 'name')).toMatch(/already/);
  });

  it('changed by two people at once: the second is told what the first changed', async () => {
    const { id } = await createLabelFormat(STEWARD, jars());
    await updateLabelFormat(STEWARD, { ...jars({ marginTopMm: '5' }), id, version: 1 });
    const stale = await refusal(updateLabelFormat(STEWARD, { ...jars({ marginTopMm: '6' }), id, version: 1 }));
    expect(stale.userMessage).toContain('upper margin from 0 to 5');
    expect((await findOwnFormats())[0]).toMatchObject({ marginTopMm: 5, version: 2 });
  });

  it('are removed, and stay in the log of changes', async () => {
    const { id } = await createLabelFormat(STEWARD, jars());
    await deleteLabelFormat(STEWARD, { id, version: 1 });
    expect(await findOwnFormats()).toEqual([]);
    const log = await reader().auditEntry.findMany({ where: { entity: 'label format' }, orderBy: { id: 'asc' } });
    expect(log.map(({ summary }) => summary)).toEqual(['Added label format Jars', 'Removed label format Jars']);
    expect(JSON.parse(log[1]?.before ?? '')).toMatchObject({ name: 'Jars', labelHeightMm: 40.5 });
  });

  it('are the steward’s to set', async () => {
    expect((await refusal(createLabelFormat(VOLUNTEER, jars()))).code).toBe('not-allowed');
  });
});
