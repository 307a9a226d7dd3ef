/**
 * Judges an accession by its lots. It lives as long as ONE lot can still raise it, so its need is that of the lot that
 * carries it: a dying lot beside a good one is told, but is no emergency. Which lot to sow from is another question: the
 * one closest to the original that can still do it.
 */
import { isKeptTrue, truenessRank } from '../pollination/isolation';
import type { Pollination } from '../reference/crop-facts';
import type { LotJudgement } from './lot-judgement';
import type { Action } from './urgency';

/** Below an even chance of raising its plants a lot is sown from only when no other does better. */
const CAN_STILL_DO_IT = 0.5;
/** More failing lots than this are counted, not named. */
const MOST_LOTS_NAMED = 2;

/** A lot of the accession, judged. */
export interface JudgedLot {
  lotNumber: string;
  judgement: LotJudgement;
  seedsLeft: number;
  /** regrowings between the original seed and this lot; 0 is as received */
  generation: number;
  /** a key of ISOLATIONS: how the seed was kept true when it was grown */
  isolation: string;
}

export interface AccessionJudgement {
  action: Action;
  /** in which to sow: the next when it must be regrown, the last safe one when it can wait; null when not known */
  season: number | null;
  /** the lot that carries the accession: the least urgent of those kept true; null when no seed is left */
  keyLotNumber: string | null;
  /** the lot to sow from when it is regrown; null when no seed is left */
  sowFromLotNumber: string | null;
  urgency: number;
  sentence: string;
}

/**
 * Judges an accession.
 *
 * @param lots         its lots, judged, in any order; empty lots do not count
 * @param pollination  of the crop: decides whether open-pollinated seed may be taken as true
 * @returns what to do with the accession, from which lot, how urgent, and one sentence
 * @throws RangeError when an isolation is not known
 * @see docs/methods/regrow-decision.md
 * Checked in tests/domain/regrow/judge-accession.test.ts
 */
export function judgeAccession(lots: readonly JudgedLot[], pollination: Pollination): AccessionJudgement {
  const stocked = lots.filter((lot) => lot.seedsLeft > 0);
  if (stocked.length === 0) {
    const sentence = lots.length === 0 ? 'No lot yet.' : 'No seed left in any lot.';
    return { action: 'leave', season: null, keyLotNumber: null, sowFromLotNumber: null, urgency: 0, sentence };
  }
  // Seed that may have crossed does not carry the variety, however alive it is, unless there is nothing else.
  const keptTrue = stocked.filter((lot) => isKeptTrue(lot.isolation, pollination));
  const candidates = keptTrue.length > 0 ? keptTrue : stocked;
  const key = carryingLot(candidates);
  const { judgement } = key;
  const sowFrom = lotToSowFrom(stocked, pollination);

  const named = stocked.length > 1 ? `${key.lotNumber}: ${judgement.sentence}` : judgement.sentence;
  const failing = stocked.filter((lot) => lot !== key && isFailing(lot.judgement));
  const notes = failing.slice(0, MOST_LOTS_NAMED).map(describeFailing);
  if (failing.length > MOST_LOTS_NAMED)
    notes.push(`${failing.length - MOST_LOTS_NAMED} more of its lots are failing too.`);
  if (keptTrue.length === 0) notes.push('None of its lots was isolated: its seed may have crossed.');
  return {
    action: judgement.action,
    season: seasonToSow(judgement),
    keyLotNumber: key.lotNumber,
    sowFromLotNumber: sowFrom.lotNumber,
    urgency: judgement.urgency,
    sentence: [named, ...notes].join(' '),
  };
}

/**
 * Orders judged accessions for the list: most urgent first, then by what is given as the name.
 *
 * @param accessions  judged, each with a name or number that settles ties
 * @returns a new array
 * Checked in tests/domain/regrow/judge-accession.test.ts
 */
export function byUrgency<Type extends { urgency: number; name: string }>(accessions: readonly Type[]): Type[] {
  return [...accessions].sort((a, b) => b.urgency - a.urgency || (a.name < b.name ? -1 : a.name > b.name ? 1 : 0));
}

/** The least urgent lot. One with a forecast is preferred: a lot of which nothing can be said is no safety. */
function carryingLot(lots: readonly JudgedLot[]): JudgedLot {
  const forecast = lots.filter((lot) => lot.judgement.forecastRefusal === null);
  return first(forecast.length > 0 ? forecast : lots, (a, b) => a.judgement.urgency - b.judgement.urgency);
}

/**
 * The lot closest to the original that can still do it: kept true before not, fewer regrowings before more, better
 * isolation before worse, better chance before poorer. When none can, the one with the best chance.
 */
function lotToSowFrom(lots: readonly JudgedLot[], pollination: Pollination): JudgedLot {
  const chance = (lot: JudgedLot) => lot.judgement.chanceOfRaisingNextSeason ?? 0;
  const untrue = (lot: JudgedLot) => (isKeptTrue(lot.isolation, pollination) ? 0 : 1);
  const closest = (a: JudgedLot, b: JudgedLot) =>
    untrue(a) - untrue(b) ||
    a.generation - b.generation ||
    truenessRank(a.isolation, pollination) - truenessRank(b.isolation, pollination) ||
    chance(b) - chance(a);
  const safe = lots.filter((lot) => !lot.judgement.rescue && lot.judgement.forecastRefusal === null);
  const safeAndTrue = safe.filter((lot) => untrue(lot) === 0);
  if (safeAndTrue.length > 0) return first(safeAndTrue, closest);
  // A true lot with an even chance comes before an open-pollinated one that is sure.
  const trueWithAChance = lots.filter((lot) => untrue(lot) === 0 && chance(lot) >= CAN_STILL_DO_IT);
  if (trueWithAChance.length > 0) return first(trueWithAChance, (a, b) => chance(b) - chance(a) || closest(a, b));
  return safe.length > 0 ? first(safe, closest) : first(lots, (a, b) => chance(b) - chance(a) || closest(a, b));
}

function seasonToSow({ action, nextSeason, lastSafeSeason }: LotJudgement): number | null {
  if (action === 'regrow') return nextSeason;
  return action === 'leave' && typeof lastSafeSeason === 'number' ? lastSafeSeason : null;
}

const isFailing = ({ rescue, chanceBelowNow }: LotJudgement): boolean =>
  rescue || (chanceBelowNow !== null && chanceBelowNow >= 0.5);

function describeFailing({ lotNumber, judgement }: JudgedLot): string {
  return judgement.rescue
    ? `${lotNumber} is past its last safe season.`
    : `${lotNumber} is below the line more likely than not.`;
}

/** The first of the lots in an order; ties go to the lot number that comes first, so that the answer never flickers. */
function first(lots: readonly JudgedLot[], order: (a: JudgedLot, b: JudgedLot) => number): JudgedLot {
  const sorted = [...lots].sort((a, b) => order(a, b) || (a.lotNumber < b.lotNumber ? -1 : 1));
  return sorted[0] as JudgedLot;
}
