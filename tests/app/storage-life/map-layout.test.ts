import { describe, expect, it } from 'vitest';
import {
  type Box,
  boxOf,
  freePlace,
  labelPlaces,
  linePlaces,
  linesOf,
  MAP_BOUNDS,
  NARROW,
  plotOf,
  toPixels,
  WIDE,
  wordPlaces,
  zoneNames,
} from '@/app/(bank)/reference/storage-life/_parts/map-layout';
import { lifeContours } from '@/lib/domain/longevity/life-contours';
import { mapZones } from '@/lib/domain/longevity/storage-life-map';
import { seedOf } from '../../domain/longevity/seed-kinds';

const maize = {
  ...seedOf({ KE: 9.993, CW: 5.993, CH: 0.0322, CQ: 0.000454 }, { oil: 0.05 }),
  constantsRange: { moistureFromPercent: 2, moistureToPercent: 25, temperatureFromC: 0, temperatureToC: 50 },
};
const fall = { initialViability: 0.95, wantedViability: 0.85 };
const apart = (a: Box, b: Box) => a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;

describe.each([
  ['wide', WIDE],
  ['narrow', NARROW],
])('the %s map of storage life', (_, frame) => {
  const plot = plotOf(frame);

  it('runs from dry to moist and from cold upwards to warm, and sets on its edge what lies off it', () => {
    expect(toPixels(frame, { moisturePercent: 2, temperatureC: -30 })).toEqual({ x: plot.left, y: plot.bottom });
    expect(toPixels(frame, { moisturePercent: 16, temperatureC: 45 })).toEqual({ x: plot.right, y: plot.top });
    expect(toPixels(frame, { moisturePercent: 40, temperatureC: 90 })).toEqual({ x: plot.right, y: plot.top });
  });

  it('has room for a label on every line and for the words of a mark anywhere, none on another', () => {
    for (let moisturePercent = 3; moisturePercent < 15; moisturePercent += 2) {
      for (let temperatureC = -25; temperatureC < 45; temperatureC += 10) {
        const taken: Box[] = zoneNames(mapZones(maize, MAP_BOUNDS), frame).map(({ box }) => box);
        const mark = toPixels(frame, { moisturePercent, temperatureC });
        const words = 'asked: 12.5 %, −18 °C';
        expect(
          freePlace(words, wordPlaces(words, mark, frame), frame, taken),
          `${moisturePercent} ${temperatureC}`,
        ).not.toBeNull();
        for (const contour of lifeContours(maize, fall, MAP_BOUNDS, [1, 2, 5, 10, 20, 50, 100, 200])) {
          const text = `${contour.years} y`;
          expect(
            freePlace(text, labelPlaces(linesOf(contour, frame).flat(), frame), frame, taken),
            text,
          ).not.toBeNull();
        }
        taken.forEach((box, index) => {
          for (const other of taken.slice(index + 1)) expect(apart(box, other)).toBe(true);
          expect(box.left >= plot.left && box.right <= plot.right).toBe(true);
        });
      }
    }
  });

  it('writes the words of a store along its temperature', () => {
    const y = toPixels(frame, { moisturePercent: 2, temperatureC: -18 }).y;
    const at = freePlace('Freezer A', linePlaces('Freezer A', y, frame), frame, []);
    expect(at && Math.abs(at.y - y)).toBeLessThan(20);
  });

  it('gives up rather than write over what is there', () => {
    expect(
      freePlace('words', [{ x: 200, y: 200 }], frame, [boxOf('words', { x: 205, y: 200 }, frame.fontSize)]),
    ).toBeNull();
    expect(freePlace('words', [{ x: 0, y: 0 }], frame, [])).toBeNull();
  });
});
