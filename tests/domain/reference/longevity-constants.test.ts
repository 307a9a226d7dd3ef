import { describe, expect, it } from 'vitest';
import { getLongevityConstants, LONGEVITY_CONSTANTS } from '../../../lib/domain/reference/longevity-constants';
import { LOW_MOISTURE_LIMITS } from '../../../lib/domain/reference/low-moisture-limits';
import { publishedRows } from './published-table';

const numberOrNull = (cell: string | undefined) => (cell ? Number(cell) : null);
const rangeOf = (cell: string | undefined) => (cell?.match(/\d+(?:\.\d+)?/g) ?? []).map(Number);

describe('longevity constants', () => {
  const rows = publishedRows('viability-constants').filter((row) => row.KE);

  it('are the nineteen fitted rows of the table copy and no others', () => {
    expect(LONGEVITY_CONSTANTS.length).toBe(19);
    expect(LONGEVITY_CONSTANTS.map(({ name }) => name.toLowerCase()).sort()).toEqual(
      rows.map((row) => row.crop?.toLowerCase()).sort(),
    );
  });

  it('equal the table copy, with standard errors, range, mark and source', () => {
    for (const constants of LONGEVITY_CONSTANTS) {
      const row = rows.find((one) => one.crop?.toLowerCase() === constants.name.toLowerCase());
      const [moistureFrom = null, moistureTo = null] = rangeOf(row?.mc_range_pct_wb);
      const [temperatureFrom = null, temperatureTo = null] = rangeOf(row?.temp_range_C);
      expect(constants, constants.key).toMatchObject({
        species: row?.species,
        KE: Number(row?.KE),
        CW: Number(row?.CW),
        CH: Number(row?.CH),
        CQ: Number(row?.CQ),
        standardErrorKE: numberOrNull(row?.se_KE),
        standardErrorCW: numberOrNull(row?.se_CW),
        moistureFromPercent: moistureFrom,
        moistureToPercent: moistureTo,
        temperatureFromC: temperatureFrom,
        temperatureToC: temperatureTo,
        lowMoistureLimitPercent: rangeOf(row?.low_mc_limit_pct)[0] ?? null,
        mark: row?.confidence_constants === 'SEEN' ? 'published' : 'from memory',
      });
      expect(constants.source, constants.key).toContain(row?.source);
    }
  });

  it('have unique keys, and an unknown key is refused by name', () => {
    expect(new Set(LONGEVITY_CONSTANTS.map(({ key }) => key)).size).toBe(LONGEVITY_CONSTANTS.length);
    expect(getLongevityConstants('pearl-millet').KE).toBe(9.336);
    expect(() => getLongevityConstants('okra')).toThrow(/getLongevityConstants.*"okra"/);
  });
});

describe('low-moisture limits', () => {
  it('equal the table copy, row by row', () => {
    const rows = publishedRows('low-moisture-limits');
    expect(LOW_MOISTURE_LIMITS.length).toBe(rows.length);
    for (const [index, limit] of LOW_MOISTURE_LIMITS.entries()) {
      const row = rows[index];
      const moisture = rangeOf(row?.low_mc_limit_pct);
      const temperature = rangeOf(row?.temp_C);
      expect(limit.species).toBe(row?.species);
      expect([limit.lowerPercent, limit.upperPercent], limit.crop).toEqual([moisture[0], moisture.at(-1)]);
      expect([limit.temperatureFromC, limit.temperatureToC], limit.crop).toEqual([temperature[0], temperature.at(-1)]);
      expect(limit.kind, limit.crop).toBe(row?.crop?.includes('no harm') ? 'no harm' : 'limit');
    }
  });
});
