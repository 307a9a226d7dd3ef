import { expect, test } from 'vitest';
import { blankDraft, draftsFromFields, readDraft } from '@/app/(bank)/germination/_parts/replicate-draft';

test('what is not classed yet is left, and is taken as dead while dead is blank', () => {
  const draft = { ...blankDraft('50'), normal: '41', abnormal: ' 3 ' };
  expect(readDraft(draft)).toMatchObject({ seeds: 50, left: 6, restIsDead: true, begun: true });
  expect(readDraft({ ...draft, dead: '4' })).toMatchObject({ left: 2, restIsDead: false });
});

test('more classed than set is a negative rest', () => {
  expect(readDraft({ ...blankDraft('50'), normal: '48', abnormal: '3' }).left).toBe(-1);
});

test('what is no whole number counts as nothing yet', () => {
  expect(readDraft({ ...blankDraft('fifty'), normal: '4.5', hard: '-1' })).toMatchObject({
    seeds: 0,
    counts: {},
    begun: false,
  });
});

test('the rows that were sent come back as they were typed, holes as blank rows', () => {
  const drafts = draftsFromFields({
    lot: 'L-1',
    'replicates.0.seeds': '50',
    'replicates.2.normal': 'x',
    'replicates.0.nonsense': '1',
  });
  expect(drafts).toEqual([blankDraft('50'), blankDraft(''), { ...blankDraft(''), normal: 'x' }]);
  expect(draftsFromFields({ lot: 'L-1' })).toBeNull();
});
