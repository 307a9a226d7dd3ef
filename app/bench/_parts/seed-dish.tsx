'use client';

import { memo, type PointerEvent, useRef, useState } from 'react';
import { DISH_SIZE, type DishPlaces, dishPlaces } from '@/app/(bank)/germination/_parts/dish-positions';
import { SeedGlyph } from '@/app/(bank)/germination/_parts/seed-glyph';
import type { SeedClass } from '@/lib/domain/germination/seed-classes';
import { type Finding, findingOf, strokeMark, withStroke } from './change-count';
import type { SeedMark } from './seeds-in-dish';
import { type Point, placesOnWay } from './seeds-on-way';

/** With more seeds than this they lie too close to be told apart by a finger; the keys count them. */
export const MOST_TAPPED = 100;
/** More than this are not drawn one by one. */
const MOST_DRAWN = 400;

interface Props {
  marks: readonly SeedMark[];
  /** class that a tap gives */
  chosen: SeedClass;
  /** nothing can be tapped, for instance while counts disagree */
  still: boolean;
  onChange: (finding: Finding) => void;
  onGone: () => void;
}

interface Stroke {
  pointerId: number;
  mark: SeedClass | 'left';
  touched: Set<number>;
  last: Point;
}

/**
 * A dish of seeds under the finger: a tap or a swipe finds seeds, the same again puts them back. It repeats for eyes and
 * fingers what the buttons beside it do and say, so it is hidden from screen readers.
 */
export function SeedDish({ marks, chosen, still, onChange, onGone }: Props) {
  const stroke = useRef<Stroke | null>(null);
  const [touched, setTouched] = useState<ReadonlySet<number> | null>(null);
  const lying = placesFor(Math.max(1, Math.min(marks.length, MOST_DRAWN)));
  const tapped = !still && marks.length <= MOST_TAPPED;
  const shown = touched && stroke.current ? withStroke(marks, touched, stroke.current.mark) : marks;

  const begin = (event: PointerEvent<SVGSVGElement>) => {
    if (!tapped || event.button !== 0 || stroke.current) return;
    const at = pointIn(event.currentTarget, event);
    const [place] = placesOnWay(lying, at, at, lying.spacing * 0.8);
    if (place === undefined) return;
    const mark = strokeMark(marks[place], chosen);
    if (mark === null) {
      onGone();
      return;
    }
    event.currentTarget.setPointerCapture(event.pointerId);
    stroke.current = { pointerId: event.pointerId, mark, touched: new Set([place]), last: at };
    setTouched(new Set([place]));
  };
  const goOn = (event: PointerEvent<SVGSVGElement>) => {
    const current = stroke.current;
    if (current?.pointerId !== event.pointerId) return;
    const at = pointIn(event.currentTarget, event);
    const before = current.touched.size;
    for (const place of placesOnWay(lying, current.last, at, lying.spacing * 0.45)) current.touched.add(place);
    current.last = at;
    if (current.touched.size > before) setTouched(new Set(current.touched));
  };
  const end = (event: PointerEvent<SVGSVGElement>) => {
    const current = stroke.current;
    if (current?.pointerId !== event.pointerId) return;
    letGo(event);
    onChange(findingOf(withStroke(marks, current.touched, current.mark)));
  };
  const letGo = (event: PointerEvent<SVGSVGElement>) => {
    if (stroke.current?.pointerId !== event.pointerId) return;
    stroke.current = null;
    setTouched(null);
  };

  return (
    <svg
      viewBox={`0 0 ${DISH_SIZE} ${DISH_SIZE}`}
      aria-hidden="true"
      data-dish
      className="absolute inset-0 size-full touch-pinch-zoom select-none"
      onPointerDown={begin}
      onPointerMove={goOn}
      onPointerUp={end}
      onPointerCancel={letGo}
    >
      <circle
        cx={DISH_SIZE / 2}
        cy={DISH_SIZE / 2}
        r={DISH_SIZE / 2 - 1.5}
        className="fill-sheet stroke-edge"
        strokeWidth="1.5"
      />
      {marks.length <= MOST_DRAWN ? (
        lying.places.map(({ x, y }, place) => (
          <Seed
            // A place in the dish stays the same place.
            // biome-ignore lint/suspicious/noArrayIndexKey: the index is the place
            key={place}
            x={x}
            y={y}
            turn={(place * 47) % 180}
            scale={lying.scale}
            mark={shown[place] ?? 'left'}
          />
        ))
      ) : (
        <text x={DISH_SIZE / 2} y={DISH_SIZE / 2} textAnchor="middle" className="fill-ink-2 text-[0.75rem]">
          {marks.length} seeds: use the keys
        </text>
      )}
    </svg>
  );
}

interface SeedProps {
  x: number;
  y: number;
  turn: number;
  scale: number;
  mark: SeedMark;
}

const Seed = memo(function Seed({ x, y, turn, scale, mark }: SeedProps) {
  const upright = mark === 'normal' || mark === 'gone';
  return (
    <g transform={`translate(${x} ${y}) rotate(${upright ? 0 : turn}) scale(${scale})`} data-mark={mark}>
      {mark === 'gone' ? (
        <circle r="9" className="fill-none stroke-edge" strokeWidth="1.2" strokeDasharray="3 4" />
      ) : (
        <SeedGlyph state={mark} />
      )}
    </g>
  );
});

const known = new Map<number, DishPlaces & { scale: number }>();

/** The dishes of a tray mostly hold the same number of seeds, and places take a while to find. */
function placesFor(seeds: number): DishPlaces & { scale: number } {
  let lying = known.get(seeds);
  if (!lying) {
    const found = dishPlaces(seeds);
    lying = { ...found, scale: Number(Math.min(found.spacing / 29, 1.1).toFixed(3)) };
    known.set(seeds, lying);
  }
  return lying;
}

/** Where a finger is, in the units of the drawing, which is as large as fits and in the middle. */
function pointIn(svg: SVGSVGElement, { clientX, clientY }: { clientX: number; clientY: number }): Point {
  const { left, top, width, height } = svg.getBoundingClientRect();
  const size = Math.min(width, height) / DISH_SIZE;
  return {
    x: (clientX - left - width / 2) / size + DISH_SIZE / 2,
    y: (clientY - top - height / 2) / size + DISH_SIZE / 2,
  };
}
