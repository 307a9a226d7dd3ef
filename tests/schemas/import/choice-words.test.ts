import { expect, test } from 'vitest';
import { ISOLATIONS } from '../../../lib/domain/pollination/isolation';
import { CONTAINERS } from '../../../lib/domain/stock/containers';
import {
  containerFromWords,
  isolationFromWords,
  sharingFromWords,
  treatmentFromWords,
} from '../../../lib/schemas/import/choice-words';

test('each choice is found by its key and by its label', () => {
  for (const { key, label } of ISOLATIONS)
    expect([isolationFromWords(key), isolationFromWords(label)]).toEqual([key, key]);
  for (const { key, label } of CONTAINERS)
    expect([containerFromWords(key), containerFromWords(label)]).toEqual([key, key]);
});

test.each([
  ['Bagged', 'bagged flowers'],
  ['blossom bags', 'bagged flowers'],
  ['Isolierkäfig', 'cage'],
  ['in a net', 'cage'],
  ['500 m distance', 'distance'],
  ['Hand-pollinated', 'hand pollination'],
  ['OP', 'none'],
  ['no', 'none'],
  ['not recorded', 'unknown'],
  ['yes', null],
  ['cage and by hand', null],
])('isolation %j is %s', (text, key) => {
  expect(isolationFromWords(text)).toBe(key);
});

test.each([
  ['Jar', 'glass-jar'],
  ['Mason jar 1 l', 'glass-jar'],
  ['foil bag', 'foil-pouch'],
  ['paper bag', 'paper-envelope'],
  ['Papiertüte', 'paper-envelope'],
  ['zip-lock', 'plastic-bag'],
  ['plastic tub', 'plastic-box'],
  ['12', null],
  ['drawer', null],
  ['jar or tin', null],
])('container %j is %s', (text, key) => {
  expect(containerFromWords(text)).toBe(key);
});

test('a lot in doubt counts as treated', () => {
  for (const no of ['no', 'Nein', 'untreated', '0', 'non traité', 'not treated'])
    expect(treatmentFromWords(no)).toBeUndefined();
  for (const yes of ['yes', 'x', 'gebeizt', 'true'])
    expect(treatmentFromWords(yes)).toBe('treated (with what is not recorded)');
  for (const doubt of ['?', 'unknown']) expect(treatmentFromWords(doubt)).toBe('not known whether treated');
  expect(treatmentFromWords(' hot water ')).toBe('hot water');
});

test('seed in doubt may not be shared, and words that are neither yes nor no are terms', () => {
  for (const yes of ['yes', 'May be shared', 'ja', 'x']) expect(sharingFromWords(yes)).toEqual({ sharing: 'may' });
  for (const no of ['no', 'Do not share', 'Nein']) expect(sharingFromWords(no)).toEqual({ sharing: 'not' });
  expect(sharingFromWords('?')).toEqual({ sharing: 'not', terms: 'not known whether it may be shared' });
  expect(sharingFromWords(' not for sale ')).toEqual({ sharing: 'with-terms', terms: 'not for sale' });
});
