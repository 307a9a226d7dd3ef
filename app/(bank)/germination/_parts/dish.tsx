import { SEED_CLASSES, type SeedClass } from '@/lib/domain/germination/seed-classes';
import { DISH_SIZE, dishPlaces } from './dish-positions';
import { SeedGlyph, type SeedState } from './seed-glyph';

/** More seeds than this are drawn as a share: each mark stands for several. */
const MOST_MARKS = 200;

interface Props {
  seeds: number;
  counts: Partial<Record<SeedClass, number>>;
  /** What the picture shows, in words. */
  label: string;
  className?: string;
}

/** A replicate as a dish of seeds: those classed as what they became, the others still lying there. */
export function Dish({ seeds, counts, label, className }: Props) {
  const marks = Math.min(seeds, MOST_MARKS);
  const states = marks > 0 ? statesOf(counts, seeds, marks) : [];
  const { places, spacing } = dishPlaces(Math.max(1, marks));
  const scale = Math.min(spacing / 29, 1.1).toFixed(3);
  return (
    <svg viewBox={`0 0 ${DISH_SIZE} ${DISH_SIZE}`} role="img" aria-label={label} className={className}>
      <circle
        cx={DISH_SIZE / 2}
        cy={DISH_SIZE / 2}
        r={DISH_SIZE / 2 - 2}
        className="fill-sheet stroke-edge"
        strokeWidth="2"
      />
      {states.map((state, index) => {
        const place = places[index];
        if (!place) return null;
        const turn = state === 'normal' ? 0 : (index * 47) % 180;
        return (
          // A place in the dish stays the same place.
          // biome-ignore lint/suspicious/noArrayIndexKey: the index is the place
          <g key={index} transform={`translate(${place.x} ${place.y}) rotate(${turn}) scale(${scale})`}>
            <SeedGlyph state={state} />
          </g>
        );
      })}
    </svg>
  );
}

function statesOf(counts: Props['counts'], seeds: number, marks: number): SeedState[] {
  const states: SeedState[] = [];
  let counted = 0;
  for (const seedClass of SEED_CLASSES) {
    counted += counts[seedClass] ?? 0;
    const upTo = Math.min(marks, Math.round((counted * marks) / seeds));
    while (states.length < upTo) states.push(seedClass);
  }
  while (states.length < marks) states.push('left');
  return states;
}
