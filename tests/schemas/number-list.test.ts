import { describe, expect, it } from 'vitest';
import { listedWords, numberList } from '../../lib/schemas/number-list';

const weights = numberList({ min: 0, max: 1000, most: 5 }, 'weights');

describe('a list of numbers', () => {
  it.each([
    ['46, 44, 49', [46, 44, 49]],
    ['46 44\n49', [46, 44, 49]],
    ['12,5; 10,2;0.5', [12.5, 10.2, 0.5]],
    ['  7 ', [7]],
    ['1.5, 2', [1.5, 2]],
  ])('reads %j', (text, numbers) => {
    expect(weights.parse(text)).toEqual(numbers);
  });

  it.each([
    ['', 'Fill this in'],
    ['12 a dish', "'a' is not a number"],
    ['46,44,49', 'put a blank or a semicolon'],
    ['5 1001', "'1001' is out of range"],
    ['1 2 3 4 5 6', 'at most 5 weights'],
  ])('refuses %j and says why', (text, message) => {
    expect(weights.safeParse(text).error?.issues[0]?.message).toContain(message);
  });

  it('takes whole numbers only where they are counts', () => {
    const counts = numberList({ min: 0, max: 100, most: 5 }, 'counts', true);
    expect(counts.parse('3 4')).toEqual([3, 4]);
    expect(counts.safeParse('3 4.5').error?.issues[0]?.message).toContain("'4.5' is not whole");
  });
});

describe('words of a list', () => {
  it('are parted by blanks, semicolons, and commas before a blank; never by a decimal comma', () => {
    expect(listedWords(' 12,5; 10,2 ;0.5,\n7 g;; ')).toEqual(['12,5', '10,2', '0.5', '7', 'g']);
    expect(listedWords(' ; ')).toEqual([]);
  });
});
