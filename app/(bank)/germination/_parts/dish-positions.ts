/*
 * Where seeds lie in a drawn dish: a honeycomb, cut round. Nothing here is measured; it is a picture of a number.
 */

export interface SeedPlace {
  x: number;
  y: number;
}

export interface DishPlaces {
  places: SeedPlace[];
  /** distance between neighbours */
  spacing: number;
}

/** The dish is drawn in a square of this size. */
export const DISH_SIZE = 200;
const RIM = 12;
const RADIUS = DISH_SIZE / 2 - RIM;

/**
 * Places for a number of seeds inside the dish, scattered, so that seeds of one class do not lie in a heap.
 *
 * Only square roots are used (they are exact everywhere) and places are rounded, so that the server and every browser
 * draw the same dish.
 *
 * @param seeds  integer, >= 1
 * @returns as many places as seeds, in the order in which they are filled
 * Checked in tests/app/dish-positions.test.ts
 */
export function dishPlaces(seeds: number): DishPlaces {
  let spacing = Math.sqrt((3.63 * RADIUS * RADIUS) / seeds);
  let inside = honeycomb(spacing);
  while (inside.length < seeds) {
    spacing *= 0.985;
    inside = honeycomb(spacing);
  }
  const kept = inside
    .sort((a, b) => squared(a) - squared(b))
    .slice(0, seeds)
    .sort((a, b) => a.y - b.y || a.x - b.x);
  const places = scatteredOrder(seeds).map((index) => kept[index] as SeedPlace);
  return {
    places: places.map(({ x, y }) => ({ x: rounded(x + DISH_SIZE / 2), y: rounded(y + DISH_SIZE / 2) })),
    spacing: rounded(spacing),
  };
}

function honeycomb(spacing: number): SeedPlace[] {
  const rowHeight = (spacing * Math.sqrt(3)) / 2;
  const found: SeedPlace[] = [];
  const limit = (RADIUS - spacing * 0.3) ** 2;
  const rows = Math.ceil(RADIUS / rowHeight);
  const columns = Math.ceil(RADIUS / spacing) + 1;
  for (let row = -rows; row <= rows; row += 1) {
    for (let column = -columns; column <= columns; column += 1) {
      const place = { x: (column + (row % 2 === 0 ? 0 : 0.5)) * spacing, y: row * rowHeight };
      if (squared(place) <= limit) found.push(place);
    }
  }
  return found;
}

/** Every index once, in steps that share no factor with the number of seeds. */
function scatteredOrder(seeds: number): number[] {
  let step = Math.max(1, Math.round(seeds * 0.618));
  while (commonFactor(step, seeds) > 1) step += 1;
  return Array.from({ length: seeds }, (_, index) => (index * step) % seeds);
}

const commonFactor = (a: number, b: number): number => (b === 0 ? a : commonFactor(b, a % b));
const squared = ({ x, y }: SeedPlace) => x * x + y * y;
const rounded = (value: number) => Math.round(value * 10) / 10;
