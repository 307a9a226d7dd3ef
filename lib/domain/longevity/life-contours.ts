/**
 * Lines of equal storage life over moisture and temperature, traced on a net by d3-contour. A storage life is worked out
 * at each node; between nodes its logarithm is taken to run straight. The columns of the net stand at even steps of log
 * moisture, along which it does run straight, and one stands at the low-moisture limit, where it has its bend.
 */
import { contours } from 'd3-contour';
import { HIGH_MOISTURE_LIMIT_PERCENT } from './equation-limits';
import { lowMoistureLimitPercent } from './low-moisture-limit';
import type { SeedKind } from './seed-kind';
import { probitsToLose, type ViabilityFall } from './storage-life';
import type { MapBounds } from './storage-life-map';
import { type StorageCondition, sigmaDays } from './viability-equation';

const DAYS_PER_YEAR = 365.25;
/** Steps of the net under the contours: fine enough that a line is within 0.1 % of the equation's years. */
const MOISTURE_STEPS = 72;
const TEMPERATURE_STEPS = 48;

/** A line of equal storage life, in data units. */
export interface LifeContour {
  years: number;
  lines: StorageCondition[][];
}

/**
 * Lines of equal storage life over a map: the equation with moisture held at the low-moisture limit, up to 15 %.
 *
 * @param seed    constants with their range and oil
 * @param fall    proportions in (0, 1), wanted < initial
 * @param bounds  the map's edges; lines end there, and at 15 % moisture
 * @param years   the lives wanted, each > 0
 * @returns for each life its lines, none where it does not occur on the map
 * @throws RangeError when an argument is outside its range
 * Checked point by point against the equation in tests/domain/longevity/life-contours.test.ts
 */
export function lifeContours(
  seed: SeedKind,
  fall: ViabilityFall,
  bounds: MapBounds,
  years: readonly number[],
): LifeContour[] {
  const probits = probitsToLose(fall);
  const driest = lowMoistureLimitPercent(seed);
  const net = {
    moistureAt: moistureColumns(bounds, driest),
    temperatureAt: steps(bounds.temperatureFromC, bounds.temperatureToC, TEMPERATURE_STEPS),
  };
  const width = MOISTURE_STEPS + 1;
  const height = TEMPERATURE_STEPS + 1;
  // Logarithms run nearly straight from node to node, the days themselves do not.
  const values = Array.from({ length: width * height }, (_, index) => {
    const moisturePercent = Math.max(driest, net.moistureAt(index % width));
    const temperatureC = net.temperatureAt(Math.floor(index / width));
    return Math.log10((sigmaDays(seed.constants, { moisturePercent, temperatureC }) * probits) / DAYS_PER_YEAR);
  });
  const trace = contours().size([width, height]).smooth(true);
  return years.map((life) => {
    if (!(life > 0)) throw new RangeError(`lifeContours: years must be above 0, got ${life}`);
    const rings = trace.contour(values, Math.log10(life)).coordinates.flat();
    return { years: life, lines: rings.flatMap((ring) => openLines(ring, width, height)).map(toData) };
  });

  // The library sets a node at the middle of its cell, half a step in.
  function toData(line: number[][]): StorageCondition[] {
    return line.map(([x = 0, y = 0]) => ({
      moisturePercent: net.moistureAt(x - 0.5),
      temperatureC: net.temperatureAt(y - 0.5),
    }));
  }
}

/** Moisture at a column of the net, or between two of them. */
function moistureColumns({ moistureFromPercent: from, moistureToPercent }: MapBounds, driest: number) {
  const to = Math.min(moistureToPercent, HIGH_MOISTURE_LIMIT_PERCENT);
  const bend = Math.min(to, Math.max(from, driest));
  const flatSteps = bend > from ? 1 : 0;
  return (column: number) =>
    column < flatSteps
      ? from + (bend - from) * column
      : // Held, for rounding may lift the last column past 15 %.
        Math.min(to, bend * (to / bend) ** ((column - flatSteps) / (MOISTURE_STEPS - flatSteps)));
}

const steps = (from: number, to: number, count: number) => (step: number) => from + ((to - from) * step) / count;

/** The library closes its lines along the edge of the net; what runs along the edge is no line of equal life. */
function openLines(ring: number[][], width: number, height: number): number[][][] {
  const isInside = ([x = 0, y = 0]: number[]) => x >= 0.5 && x <= width - 0.5 && y >= 0.5 && y <= height - 0.5;
  const points = ring.slice(0, -1);
  const edge = points.findIndex((point) => !isInside(point));
  // A ring that never meets the edge is a line that comes back to itself.
  if (edge === -1) return [ring];
  const lines: number[][][] = [];
  let line: number[][] = [];
  for (const point of [...points.slice(edge), ...points.slice(0, edge)]) {
    if (isInside(point)) line.push(point);
    else {
      if (line.length > 1) lines.push(line);
      line = [];
    }
  }
  if (line.length > 1) lines.push(line);
  return lines;
}
