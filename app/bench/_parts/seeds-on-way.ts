export interface Point {
  x: number;
  y: number;
}

interface Lying {
  places: readonly Point[];
  /** distance between neighbours */
  spacing: number;
}

/**
 * The seeds that a finger went over between two points. A fast swipe is reported in leaps longer than a seed is wide, so
 * the way between is walked in steps, and each step touches the nearest seed only.
 *
 * @param lying  where the seeds lie, and how far apart
 * @param from   where the finger was
 * @param to     where it is; the same for a tap
 * @param reach  how far from a seed's middle it still counts, in the units of the drawing
 * @returns places, each once, in the order in which they were met
 * Checked in tests/app/bench/seeds-on-way.test.ts
 */
export function placesOnWay({ places, spacing }: Lying, from: Point, to: Point, reach: number): number[] {
  const steps = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / (spacing / 3)));
  const met = new Set<number>();
  for (let step = 0; step <= steps; step += 1) {
    const x = from.x + ((to.x - from.x) * step) / steps;
    const y = from.y + ((to.y - from.y) * step) / steps;
    let nearest = -1;
    let shortest = reach;
    for (const [place, at] of places.entries()) {
      const distance = Math.hypot(at.x - x, at.y - y);
      if (distance <= shortest) {
        shortest = distance;
        nearest = place;
      }
    }
    if (nearest >= 0) met.add(nearest);
  }
  return [...met];
}
