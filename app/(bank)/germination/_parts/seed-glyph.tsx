import type { SeedClass } from '@/lib/domain/germination/seed-classes';

export type SeedState = SeedClass | 'left';

/** One seed or seedling as it lies in the dish, round the origin, about 24 wide: a shape for each class. */
export function SeedGlyph({ state }: { state: SeedState }) {
  switch (state) {
    case 'normal':
      return (
        <>
          <circle r="12" className="fill-leaf" />
          <path
            d="M0 6v-9m0 3.5c-6 0-6-6-6-6 6 0 6 3.5 6 6m0-1c5 0 6-5 6-5-5-1-6 2.5-6 5"
            className="fill-none stroke-sheet"
            strokeWidth="1.8"
          />
        </>
      );
    case 'abnormal':
      return (
        <>
          <rect x="-10" y="-10" width="20" height="20" className="fill-ochre-soft stroke-ochre" strokeWidth="2" />
          <path d="M-5 6 1 1-4-6M1 1l5-3" className="fill-none stroke-ochre" strokeWidth="2" />
        </>
      );
    case 'hard':
      return <ellipse rx="7.5" ry="10" className="fill-sheet stroke-ink" strokeWidth="3.5" />;
    case 'fresh':
      return (
        <>
          <ellipse rx="8" ry="11" className="fill-leaf-soft stroke-leaf" strokeWidth="2" />
          <circle r="3" className="fill-leaf" />
        </>
      );
    case 'dead':
      return <path d="M-6-6 6 6M6-6-6 6" className="stroke-madder" strokeWidth="3" />;
    case 'left':
      return <ellipse rx="8" ry="11" className="fill-ink" />;
  }
}

/** The class's shape beside its word. */
export function ClassIcon({ state }: { state: SeedState }) {
  return (
    <svg viewBox="-14 -14 28 28" aria-hidden="true" className="size-4 shrink-0">
      <SeedGlyph state={state} />
    </svg>
  );
}
