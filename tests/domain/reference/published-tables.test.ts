import { describe, expect, it } from 'vitest';
import { CROPS } from '../../../lib/domain/reference/all-crops';
import type { Fact } from '../../../lib/domain/reference/crop-facts';
import { temperaturesFromPrinted } from '../../../lib/domain/reference/parse-printed';
import { printedRowName, publishedRows } from './published-table';

/** Facts whose source matches, with their crop and the table row that the source names. */
function factsWithRows(sourcePattern: RegExp, kind: Fact['kind'], table: string, rowColumn: string) {
  const rows = publishedRows(table);
  return CROPS.flatMap((crop) =>
    crop.facts
      .filter((fact) => fact.kind === kind && sourcePattern.test(fact.source))
      .map((fact) => {
        const name = printedRowName(fact.source);
        const row = rows.find((candidate) => candidate[rowColumn] === name);
        if (!row) throw new Error(`${crop.name}: no row "${name}" in ${table}`);
        return { crop: crop.name, fact, row };
      }),
  );
}

const figures = (text: string) => (text.match(/\d+(?:\.\d+)?/g) ?? []).map(Number);

describe('facts equal the printed tables', () => {
  it('minimum germination is 7 CFR 201.31 as a proportion', () => {
    const checked = factsWithRows(/201\.31,/, 'minimum germination', 'cfr-201-31', 'kind');
    expect(checked.length).toBeGreaterThanOrEqual(50);
    for (const { crop, fact, row } of checked) {
      const percent = Number(row.minimum_germination_percent_incl_hard_seed);
      expect([fact.lower, fact.upper], crop).toEqual([percent / 100, percent / 100]);
      expect(fact.text).toMatch(/hard seed/);
    }
  });

  it('seeds per gram is 7 CFR 201.46 Table 1', () => {
    const checked = factsWithRows(/201\.46/, 'seeds per gram', 'cfr-201-46-seeds-per-gram', 'kind');
    expect(checked.length).toBeGreaterThanOrEqual(60);
    for (const { crop, fact, row } of checked) {
      const printed = figures(row.approx_seeds_per_gram ?? '');
      expect([fact.lower, fact.upper], crop).toEqual([printed[0], printed.at(-1)]);
    }
  });

  it('certified-seed isolation is 7 CFR 201.76, lowest to highest class in metres', () => {
    const checked = factsWithRows(/201\.76/, 'isolation distance', 'cfr-201-76-isolation', 'crop');
    expect(checked.length).toBeGreaterThanOrEqual(28);
    for (const { crop, fact, row } of checked) {
      // The metric columns were printed by the regulation, or computed apart from this code: two decimals.
      const metres = [row.foundation_m, row.registered_m, row.certified_m].filter((cell) => cell !== '').map(Number);
      expect(Math.abs((fact.lower ?? Number.NaN) - Math.min(...metres)), crop).toBeLessThan(0.006);
      expect(Math.abs((fact.upper ?? Number.NaN) - Math.max(...metres)), crop).toBeLessThan(0.006);
      if (row.note) expect(fact.text, crop).toContain(row.note);
    }
  });

  it('garden isolation is the printed feet or miles, converted', () => {
    const checked = factsWithRows(/row "/, 'isolation distance', 'isolation-population', 'crop');
    expect(checked.length).toBeGreaterThanOrEqual(45);
    for (const { crop, fact, row } of checked) {
      const given = /given as ([^;]+)/.exec(fact.text ?? '')?.[1] ?? '';
      const printed = row.isolation_distance ?? '';
      // The chart lost the dash of its corn row; the table copy says how it is read.
      expect(printed.includes('dash lost') ? printed : printed.slice(0, given.length), crop).toContain(given);
      // Converted here on its own: a figure without a unit takes the unit that ends the range.
      const ends = given.replaceAll(',', '').split('-');
      const metres = ends.map((end) => {
        const [numerator, denominator = 1] = (/[\d./]+/.exec(end)?.[0] ?? '').split('/').map(Number);
        const figure = (numerator ?? Number.NaN) / denominator;
        const unit = (/ft|mi/.exec(end) ?? /ft|mi$/.exec(given))?.[0];
        return figure * (unit === 'ft' ? 0.3048 : 1609.344);
      });
      expect(Math.abs((fact.lower ?? Number.NaN) - (metres[0] ?? Number.NaN)), crop).toBeLessThan(0.006);
      expect(Math.abs((fact.upper ?? Number.NaN) - (metres.at(-1) ?? Number.NaN)), crop).toBeLessThan(0.006);
      expect(fact.mark, crop).toBe(row.confidence?.startsWith('SEEN') ? 'common practice' : 'from memory');
    }
  });

  it('minimum plants is the printed range of the row', () => {
    const checked = factsWithRows(/row "/, 'minimum plants', 'isolation-population', 'crop');
    expect(checked.length).toBeGreaterThanOrEqual(50);
    for (const { crop, fact, row } of checked) {
      const printed = figures((row.minimum_plants ?? '').split(' (')[0] ?? '');
      expect([fact.lower, fact.upper], crop).toEqual([printed[0], printed.at(-1)]);
      expect(fact.mark, crop).toBe(row.confidence?.startsWith('SEEN') ? 'common practice' : 'from memory');
    }
  });

  it('storage life spans every source of the row, and names exactly those', () => {
    const checked = factsWithRows(/row "/, 'storage life', 'storage-life-years', 'crop');
    expect(checked.length).toBeGreaterThanOrEqual(40);
    for (const { crop, fact, row } of checked) {
      const cells = Object.entries(row).filter(([column, cell]) => column !== 'crop' && cell !== '');
      const years = cells.flatMap(([, cell]) => figures(cell));
      expect([fact.lower, fact.upper], crop).toEqual([Math.min(...years), Math.max(...years)]);
      const byLetter = cells.map(([column, cell]) => `${column.slice(0, 1)} ${cell}`).join(', ');
      expect(fact.text, crop).toBe(`years by source: ${byLetter}`);
    }
  });

  it('life cycle agrees with the growers’ chart where it names the crop by its row', () => {
    const rows = publishedRows('isolation-population');
    let compared = 0;
    for (const crop of CROPS) {
      const names = crop.facts.map((fact) => printedRowName(fact.source));
      const row = rows.find((candidate) => names.includes(candidate.crop));
      const cycle = row?.life_cycle ?? '';
      if (!row || !/^(annual|biennial|perennial)( \(dioecious\))?$/.test(cycle)) continue;
      // Rows for a whole group cover crops of either cycle; the note says when a row is another crop's.
      if (/family/.test(row.crop ?? '')) continue;
      compared += 1;
      expect(cycle.startsWith(crop.lifeCycle), `${crop.name}: ${cycle}`).toBe(true);
    }
    expect(compared).toBeGreaterThanOrEqual(35);
  });
});

describe('germination methods equal 7 CFR 201.58 Table 2', () => {
  const rows = publishedRows('cfr-201-58');
  const checked = CROPS.flatMap((crop) =>
    crop.germination
      .filter((method) => method.mark === 'published')
      .map((method) => {
        const kind = printedRowName(method.source);
        const row = rows.find((one) => one.kind === kind && method.source.includes(`${one.section} kind`));
        if (!row) throw new Error(`${crop.name}: no row "${kind}"`);
        return { crop: crop.name, method, row };
      }),
  );

  it('covers at least 75 methods', () => {
    expect(checked.length).toBeGreaterThanOrEqual(75);
  });

  it('substrata, temperatures and days are as printed', () => {
    for (const { crop, method, row } of checked) {
      expect(method.substrata.join(', '), crop).toBe(row.substrata);
      expect(method.temperatures, crop).toBe(row.temperature_C);
      expect(method.firstCountDays, crop).toBe(row.first_count_days === 'None' ? null : Number(row.first_count_days));
      expect(method.finalCountDays, crop).toBe(Number(row.final_count_days));
    }
  });

  it('alternating temperatures hold the first figure at night and the second by day', () => {
    const onion = checked.find(({ crop }) => crop === 'Onion')?.method;
    const okra = checked.find(({ crop }) => crop === 'Okra')?.method;
    expect(onion?.temperatureRegimes).toEqual([{ dayC: 20, nightC: null }]);
    expect(okra?.temperatureRegimes).toEqual([{ dayC: 30, nightC: 20 }]);
  });

  it('temperatures are parsed as printed, except celeriac whose 5-25 is read as 15-25', () => {
    for (const { crop, method } of checked) {
      const read = crop === 'Celeriac' ? '15-25; 20' : method.temperatures;
      expect(method.temperatureRegimes, crop).toEqual(temperaturesFromPrinted(read));
    }
  });

  it('flags hard seed exactly where the table does', () => {
    for (const { crop, method, row } of checked) {
      expect(method.hardSeedOccurs, crop).toBe(row.hard_seeds_may_be_present === '1');
    }
  });

  it('requires light exactly where the specific requirements do, not where only dormant seed needs it', () => {
    for (const { crop, method, row } of checked) {
      expect(method.light, crop).toBe((row.specific_requirements ?? '').includes('Light'));
    }
    expect(checked.find(({ crop }) => crop === 'Tomato')?.method.light).toBe(false);
  });

  it('carries every printed requirement and dormancy treatment into words', () => {
    for (const { crop, method, row } of checked) {
      const specific = row.specific_requirements ?? '';
      const dormant = row.fresh_and_dormant_seed ?? '';
      const words = method.preTreatment ?? '';
      const bareSpecific = specific === '' || specific === 'Light';
      if (bareSpecific && dormant === '' && crop !== 'Celeriac') expect(method.preTreatment, crop).toBeNull();
      else expect(words, crop).not.toBe('');
      const printed = `${specific} ${dormant}`;
      if (/KNO3/.test(printed)) expect(words, crop).toMatch(/0\.2 % potassium nitrate/);
      if (/[Pp]rechill/.test(printed)) expect(words, crop).toMatch(/prechill/i);
      if (/[Pp]redry/.test(printed)) expect(words, crop).toMatch(/predry/);
      if (/dry side/.test(printed)) expect(words, crop).toMatch(/dry side/);
      if (dormant !== '' && !/\(b\)\(12\)/.test(dormant)) expect(words, crop).toMatch(/Fresh or dormant seed:/);
      // Days and degrees printed in the cells must survive; paragraph references like (a)(9) are spelled out.
      for (const figure of figures(printed.replaceAll(/\(\d+\)/g, '').replaceAll('KNO3', ''))) {
        expect(figures(words), `${crop}: ${figure} of "${printed}"`).toContain(figure);
      }
    }
  });
});
