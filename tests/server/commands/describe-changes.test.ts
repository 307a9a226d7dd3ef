import { expect, it } from 'vitest';
import { describeChanges } from '@/lib/server/commands/describe-changes';

const LABELS = { name: 'name', donor: 'donor', notes: 'notes', plants: 'plants needed' };

it('says what changed from what to what', () => {
  expect(describeChanges({ name: 'Holm', plants: 20 }, { name: 'Holm Yellow', plants: 30 }, LABELS)).toBe(
    'name from “Holm” to “Holm Yellow”, plants needed from 20 to 30',
  );
});

it('says what was filled in or emptied, and takes undefined and null for the same', () => {
  expect(describeChanges({ donor: null, notes: 'old' }, { donor: 'a neighbour', notes: null }, LABELS)).toBe(
    'donor filled in with “a neighbour”, notes emptied (was “old”)',
  );
  expect(describeChanges({ donor: null }, { donor: undefined }, LABELS)).toBe('');
});

it('names long texts without quoting them', () => {
  expect(describeChanges({ notes: 'x'.repeat(61) }, { notes: 'y' }, LABELS)).toBe('notes rewritten');
});

it('looks only at fields with a label', () => {
  expect(describeChanges({ version: 1 }, { version: 2 }, LABELS)).toBe('');
});
