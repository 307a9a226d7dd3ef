import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { decodeText } from '@/lib/domain/spreadsheet/decode-text';
import { EXPECTED } from '@/tests/fixtures/logger-files/expected';
import { guessText, problemCounts, readText, written } from './read-text';

const FOLDER = path.resolve('tests/fixtures/logger-files');

function textOf(file: string): string {
  const decoded = decodeText(readFileSync(path.join(FOLDER, file)));
  if (!decoded.ok) throw new Error(decoded.reason);
  return decoded.text;
}

it('has an expectation for every file', () => {
  expect(
    readdirSync(FOLDER)
      .filter((file) => !file.endsWith('.ts'))
      .sort(),
  ).toEqual(EXPECTED.map(({ file }) => file));
});

describe.each(EXPECTED)('$file', ({ file, guess, says, readings, problems }) => {
  const text = textOf(file);

  it('has its layout guessed, and asks for nothing that it shows', () => {
    expect(guessText(text).layout).toMatchObject(guess);
  });

  it.each([1 << 16, 7])('gives the readings that a person reads in it, in pieces of %d', (pieceLength) => {
    const { dateOrder, zone, ...rest } = guessText(text).layout;
    const contents = readText(
      text,
      { ...rest, dateOrder: says?.dateOrder ?? dateOrder ?? 'day-month-year', zone: says?.zone ?? zone ?? 'UTC' },
      pieceLength,
    );
    expect(written(contents)).toEqual(readings);
    expect(problemCounts(contents)).toEqual(problems);
  });
});
