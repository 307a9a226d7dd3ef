/** Where things stand on the map of storage life: data units to pixels, and texts that do not lie on each other. */
import type { LifeContour } from '@/lib/domain/longevity/life-contours';
import type { MapBounds, MapZone } from '@/lib/domain/longevity/storage-life-map';
import type { StorageCondition } from '@/lib/domain/longevity/viability-equation';

/** What the map shows: moistures from bone dry to just past the equation's limit, stores from deep-freeze to hot shed. */
export const MAP_BOUNDS: MapBounds = {
  moistureFromPercent: 2,
  moistureToPercent: 16,
  temperatureFromC: -30,
  temperatureToC: 45,
};

/** A drawing's size and margins, pixels. */
export interface Frame {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
  fontSize: number;
}

export const WIDE: Frame = { width: 720, height: 480, left: 48, right: 12, top: 12, bottom: 46, fontSize: 13 };
export const NARROW: Frame = { width: 316, height: 400, left: 34, right: 6, top: 8, bottom: 42, fontSize: 11 };

export interface Point {
  x: number;
  y: number;
}

export interface Box {
  left: number;
  right: number;
  top: number;
  bottom: number;
}

/** The plot's edges in pixels. */
export const plotOf = (frame: Frame): Box => ({
  left: frame.left,
  right: frame.width - frame.right,
  top: frame.top,
  bottom: frame.height - frame.bottom,
});

/** Moisture runs to the right, temperature upwards; what lies off the map is set on its edge. */
export function toPixels(frame: Frame, { moisturePercent, temperatureC }: StorageCondition): Point {
  const plot = plotOf(frame);
  const { moistureFromPercent, moistureToPercent, temperatureFromC, temperatureToC } = MAP_BOUNDS;
  const along = clamp((moisturePercent - moistureFromPercent) / (moistureToPercent - moistureFromPercent));
  const up = clamp((temperatureC - temperatureFromC) / (temperatureToC - temperatureFromC));
  return {
    x: plot.left + along * (plot.right - plot.left),
    y: plot.bottom - up * (plot.bottom - plot.top),
  };
}

const clamp = (share: number): number => Math.min(1, Math.max(0, share));

const widthOf = (text: string, fontSize: number): number => text.length * fontSize * LETTER_WIDTH;
/** Of an average letter, as a share of the font size: near enough to keep texts apart. */
const LETTER_WIDTH = 0.55;

/** The room that a text takes, from the middle of its base line. */
export function boxOf(text: string, middle: Point, fontSize: number): Box {
  const half = widthOf(text, fontSize) / 2 + 3;
  return { left: middle.x - half, right: middle.x + half, top: middle.y - fontSize, bottom: middle.y + 4 };
}

/** The room that a mark takes. */
export const boxAround = ({ x, y }: Point): Box => ({ left: x - 14, right: x + 14, top: y - 14, bottom: y + 14 });

/** A zone of the map in pixels. */
export function boxOfZone(zone: MapBounds, frame: Frame): Box {
  const lower = toPixels(frame, { moisturePercent: zone.moistureFromPercent, temperatureC: zone.temperatureFromC });
  const upper = toPixels(frame, { moisturePercent: zone.moistureToPercent, temperatureC: zone.temperatureToC });
  return { left: lower.x, right: upper.x, top: upper.y, bottom: lower.y };
}

const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const isWithin = (box: Box, plot: Box): boolean =>
  box.left >= plot.left && box.right <= plot.right && box.top >= plot.top && box.bottom <= plot.bottom;

/**
 * The first of some places at which a text stands within the plot and on nothing that is there already.
 *
 * @param text    what is written, on one line
 * @param places  middles of its base line, the best first
 * @param taken   what is there already; the text's own box is added
 * @returns the place, or null when none is free
 */
export function freePlace(text: string, places: readonly Point[], frame: Frame, taken: Box[]): Point | null {
  for (const place of places) {
    const box = boxOf(text, place, frame.fontSize);
    if (isWithin(box, plotOf(frame)) && !taken.some((other) => overlaps(box, other))) {
      taken.push(box);
      return place;
    }
  }
  return null;
}

/** Places on a line for its label: nearest first to the diagonal from cold and dry to warm and moist, which every line crosses. */
export function labelPlaces(line: readonly Point[], frame: Frame): Point[] {
  const plot = plotOf(frame);
  const offDiagonal = ({ x, y }: Point) =>
    Math.abs((x - plot.left) / (plot.right - plot.left) - (plot.bottom - y) / (plot.bottom - plot.top));
  return [...line]
    .sort((a, b) => offDiagonal(a) - offDiagonal(b))
    .map(({ x, y }) => ({ x, y: y + frame.fontSize / 3 }));
}

/** Places for a mark's words: right, left, above and below it, then a line or two farther off. */
export function wordPlaces(text: string, mark: Point, frame: Frame): Point[] {
  const half = widthOf(text, frame.fontSize) / 2;
  const level = mark.y + frame.fontSize / 3;
  const aside = half + 20;
  const beside = [0, -0.5, 0.5, -1, 1].map((share) => mark.x + share * half);
  return [
    { x: mark.x + aside, y: level },
    { x: mark.x - aside, y: level },
    ...[0, 1, 2].flatMap((lines) => {
      const off = lines * (frame.fontSize + 4);
      const above = mark.y - 19 - off;
      const below = mark.y + 16 + frame.fontSize + off;
      return [...beside, mark.x + aside, mark.x - aside].flatMap((x) => [
        { x, y: above },
        { x, y: below },
      ]);
    }),
    // Past a name that stands upright beside the mark.
    { x: mark.x + aside + 2 * frame.fontSize, y: level },
    { x: mark.x - aside - 2 * frame.fontSize, y: level },
  ];
}

/** Places for the words of a line across the map: above and below it, at its right end, middle and left. */
export function linePlaces(text: string, y: number, frame: Frame): Point[] {
  const plot = plotOf(frame);
  const half = widthOf(text, frame.fontSize) / 2 + 8;
  return [plot.right - half, (plot.left + plot.right) / 2, plot.left + half].flatMap((x) => [
    { x, y: y - 6 },
    { x, y: y + frame.fontSize + 4 },
  ]);
}

interface ZoneName {
  text: MapZone;
  at: Point;
  upright: boolean;
  box: Box;
}

/** Names of the zones that have room for one, upright in a strip; the words below the map name every zone again. */
export function zoneNames(zones: readonly (MapBounds & { zone: MapZone })[], frame: Frame): ZoneName[] {
  const named = new Map<MapZone, ZoneName>();
  for (const zone of zones) {
    const area = boxOfZone(zone, frame);
    // The other half lies under the strip that is too moist.
    if (zone.zone === 'freezing may kill') area.right = (area.left + area.right) / 2;
    const [width, height] = [area.right - area.left, area.bottom - area.top];
    const length = widthOf(zone.zone, frame.fontSize) + 8;
    const isNarrow = Math.min(width, height) < frame.fontSize + 4;
    if (named.has(zone.zone) || isNarrow || Math.max(width, height) < length) continue;
    const upright = width < length;
    const at = upright
      ? { x: (area.left + area.right) / 2 + frame.fontSize / 3, y: area.top + length / 2 }
      : { x: area.left + Math.max(length / 2, width * 0.4), y: area.bottom - 8 };
    const half = length / 2;
    const box = upright
      ? { left: at.x - frame.fontSize, right: at.x + 4, top: at.y - half, bottom: at.y + half }
      : { left: at.x - half, right: at.x + half, top: at.y - frame.fontSize, bottom: at.y + 4 };
    named.set(zone.zone, { text: zone.zone, at, upright, box });
  }
  return [...named.values()];
}

/** A line of equal life in pixels. */
export const linesOf = (contour: LifeContour, frame: Frame): Point[][] =>
  contour.lines.map((line) => line.map((point) => toPixels(frame, point)));

/** A path through points, to a tenth of a pixel. */
export const pathOf = (line: readonly Point[]): string =>
  line.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');
