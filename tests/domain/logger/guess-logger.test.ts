import { describe, expect, it } from 'vitest';
import { guessDateOrder } from '@/lib/domain/logger/guess-date-order';
import { guessLogger } from '@/lib/domain/logger/guess-logger';
import { headingMeans, offsetIn, unitIn } from '@/lib/domain/logger/heading-words';
import { lineSampler } from '@/lib/domain/logger/sample-lines';
import { guessText, LATEST } from './read-text';

const cells = (...dates: string[]) => dates.map((date) => ({ date, time: null }));

describe('the order of day and month', () => {
  it('is the one that passes midnight in one step', () => {
    const head = cells('05/03/2024 22:00', '05/03/2024 23:00', '06/03/2024 00:00', '06/03/2024 01:00');
    expect(guessDateOrder(head, [], LATEST)).toBe('day-month-year');
    const other = cells('03/05/2024 22:00', '03/05/2024 23:00', '03/06/2024 00:00', '03/06/2024 01:00');
    expect(guessDateOrder(other, [], LATEST)).toBe('month-day-year');
  });
  it('is proved by a day over 12, wherever it stands', () => {
    const head = cells('05/03/2024 10:00', '05/03/2024 11:00');
    expect(guessDateOrder(head, cells('05/04/2024 10:00', '05/13/2024 10:00'), LATEST)).toBe('month-day-year');
  });
  it('is open within one day, and asked for', () => {
    expect(guessDateOrder(cells('05/03/2024 10:00', '05/03/2024 11:00', '05/03/2024 12:00'), [], LATEST)).toBe('open');
    const guess = guessText('at;t\n05/03/2024 10:00;4\n05/03/2024 11:00;4\n');
    expect(guess.layout.dateOrder).toBeNull();
    expect(guess.notes.join()).toContain('day or the month first');
  });
  it('does not lead into the future', () => {
    // 12 January 2026 or 1 December 2026: today is 25 November 2026.
    expect(guessDateOrder(cells('12/01/2026 10:00', '12/01/2026 11:00'), [], LATEST)).toBe('day-month-year');
  });
  it('is not needed where the year stands first or months have names', () => {
    expect(guessDateOrder(cells('2024-03-05 10:00', '2024-03-05 11:00'), [], LATEST)).toBe('year-month-day');
    expect(guessDateOrder(cells('5 Mar 2024 10:00', '5 Mar 2024 11:00'), [], LATEST)).toBe('day-month-year');
    expect(guessDateOrder(cells('1709643907', '1709647507'), [], LATEST)).toBe('epoch-seconds');
    expect(guessDateOrder(cells('45356.5', '45356.75'), [], LATEST)).toBe('day-number');
  });
});

describe('headings', () => {
  it.each([
    ['Temperature (°C)', 2, 0],
    ['Temp, °F', 2, 0],
    ['t_air', 1, 0],
    ['Luftfeuchtigkeit [%]', 0, 2],
    ['rh', 0, 2],
    ['Dew point °C', 0, 0],
    ['Battery V', 0, 0],
    ['Max temp', 0, 0],
  ])('%s', (heading, temperature, humidity) => expect(headingMeans(heading)).toEqual({ temperature, humidity }));

  it('name units and offsets', () => {
    expect(['Temp °F', 'T (C)', 'unit: Fahrenheit', 'deg C', 'Coffee'].map(unitIn)).toEqual(['F', 'C', 'F', 'C', null]);
    expect(['Time, GMT-05:00', 'UTC+1', 'all times UTC', 'UTC−03:30', 'winter time'].map(offsetIn)).toEqual([
      -18_000,
      3600,
      0,
      -12_600,
      null,
    ]);
  });
});

describe('a layout', () => {
  it('is not found in a file without readings', () => {
    const sampler = lineSampler();
    sampler.push('Number;Name\nB-1;Wrack Line\n');
    expect(guessLogger(sampler.finish(), LATEST)).toMatchObject({ ok: false });
  });
  it('warns where Celsius would be too hot for a store', () => {
    const guess = guessText('at,reading\n2024-03-05 10:00,68.2\n2024-03-05 11:00,68.4\n');
    expect(guess.notes.join()).toContain('look like Fahrenheit');
  });
  it('passes over numbers of rows, and takes figures without headings in their order', () => {
    const guess = guessText('1;2024-03-05 10:00;4,1;45\n2;2024-03-05 11:00;4,2;46\n3;2024-03-05 12:00;4,2;46\n');
    expect(guess.layout).toMatchObject({ dateColumn: 1, temperatureColumn: 2, humidityColumn: 3, firstLine: 1 });
  });
});

describe('a sample of lines', () => {
  it('keeps the head whole and spreads the rest evenly', () => {
    const sampler = lineSampler();
    for (let line = 1; line <= 20_000; line += 1) sampler.push(`${line}\n`);
    const { head, spread, lines } = sampler.finish();
    expect(lines).toBe(20_000);
    expect(head.map(({ text }) => Number(text))).toEqual(Array.from({ length: 600 }, (_, index) => index + 1));
    expect(spread.length).toBeGreaterThan(400);
    const steps = new Set(spread.slice(1).map(({ line }, index) => line - (spread[index]?.line ?? 0)));
    expect(steps.size).toBe(1);
  });
});
