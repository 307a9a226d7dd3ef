import type { CropFacts, Fact, FactKind } from './crop-facts';
import { ALLIUMS } from './crops/alliums';
import { BEANS } from './crops/beans';
import { BEETS_AND_AMARANTHS } from './crops/beets-and-amaranths';
import { CABBAGES } from './crops/cabbages';
import { CEREALS } from './crops/cereals';
import { CUCURBITS } from './crops/cucurbits';
import { DAISIES } from './crops/daisies';
import { DOCKS_AND_BUCKWHEAT } from './crops/docks-and-buckwheat';
import { FIBRE_AND_OIL_CROPS } from './crops/fibre-and-oil-crops';
import { FORAGE_LEGUMES } from './crops/forage-legumes';
import { HERBS_AND_ASPARAGUS } from './crops/herbs-and-asparagus';
import { MAIZE_RICE_AND_MILLETS } from './crops/maize-rice-and-millets';
import { MALLOWS } from './crops/mallows';
import { NIGHTSHADES } from './crops/nightshades';
import { PEAS_AND_PULSES } from './crops/peas-and-pulses';
import { TURNIPS_AND_MUSTARDS } from './crops/turnips-and-mustards';
import { UMBELLIFERS } from './crops/umbellifers';

/** Every crop that the reference knows, grouped by family as the files are. Names are unique. */
export const CROPS: readonly CropFacts[] = [
  ...ALLIUMS,
  ...CEREALS,
  ...MAIZE_RICE_AND_MILLETS,
  ...BEETS_AND_AMARANTHS,
  ...DOCKS_AND_BUCKWHEAT,
  ...CABBAGES,
  ...TURNIPS_AND_MUSTARDS,
  ...DAISIES,
  ...UMBELLIFERS,
  ...NIGHTSHADES,
  ...CUCURBITS,
  ...PEAS_AND_PULSES,
  ...BEANS,
  ...FORAGE_LEGUMES,
  ...MALLOWS,
  ...FIBRE_AND_OIL_CROPS,
  ...HERBS_AND_ASPARAGUS,
];

/**
 * The crop of that name.
 *
 * @param name English name as in CROPS, any case
 * @returns the crop, or undefined when the reference does not know it
 * Checked in tests/domain/reference/all-crops.test.ts
 */
export function getCropFacts(name: string): CropFacts | undefined {
  const wanted = name.trim().toLowerCase();
  return CROPS.find((crop) => crop.name.toLowerCase() === wanted);
}

/** A fact's span over all its sources, with the facts that made it: show the span, never one figure. */
export type FactSpan = { ok: true; lower: number; upper: number; facts: Fact[] } | { ok: false; reason: 'not-known' };

/**
 * The span of a kind of fact over all the sources a crop has for it.
 *
 * @param crop crop
 * @param kind kind of fact; the unit is FACT_UNITS[kind]
 * @returns lowest and highest figure and the facts behind them, or 'not-known'
 * Checked in tests/domain/reference/all-crops.test.ts
 */
export function factSpan(crop: CropFacts, kind: FactKind): FactSpan {
  const facts = crop.facts.filter((fact) => fact.kind === kind);
  const figures = facts.flatMap((fact) => [fact.lower, fact.upper]).filter((figure) => figure !== null);
  if (figures.length === 0) return { ok: false, reason: 'not-known' };
  return { ok: true, lower: Math.min(...figures), upper: Math.max(...figures), facts };
}
