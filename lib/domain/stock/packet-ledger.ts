/**
 * A packet's ledger: an append-only list of movements whose sum is what the packet holds.
 *
 * Seed is counted or weighed, whichever the hand did, so a movement states seeds, grams or both. The unit that was not
 * stated is filled in from the lot's thousand-seed weight; without one, the balance in that unit is not known and says
 * so with null, never with a wrong figure.
 */
import { MOVEMENT_DIRECTIONS, type MovementReason } from './movement-reasons';
import { requireThousandSeedWeight, SEEDS_PER_THOUSAND } from './seed-count';

/** One line of the ledger. Positive is seed in, negative is seed out; at least one of the two is stated. */
export interface Movement {
  reason: MovementReason;
  /** whole seeds, signed; null when it was not counted */
  seeds: number | null;
  /** grams, signed; null when it was not weighed */
  grams: number | null;
}

/** What a packet holds. null: not known in that unit. `seedsEstimated`: some of the seeds were weighed, not counted. */
export interface PacketBalance {
  seeds: number | null;
  grams: number | null;
  seedsEstimated: boolean;
  gramsEstimated: boolean;
}

/** Grams are summed as whole micrograms, so that what goes in as 0.1 + 0.2 and comes out as 0.3 leaves exactly 0. */
const MICROGRAMS_PER_GRAM = 1_000_000;

/**
 * What a packet holds: the sum of its movements.
 *
 * @param movements            the packet's whole ledger, in any order
 * @param thousandSeedWeightG  grams per 1000 seeds of its lot, > 0; null when not known
 * @returns seeds (whole) and grams, each null when a movement does not state it and it cannot be estimated; 0 and 0 for
 *          an empty ledger. A ledger that was not checked with canWithdraw may come out negative: it is reported as is
 * @throws RangeError when a movement states neither unit, has a part seed, goes against its reason (see
 *         MOVEMENT_DIRECTIONS), or its seeds and grams go opposite ways; or the thousand-seed weight is not > 0
 * Checked in tests/domain/stock/packet-ledger.test.ts
 */
export function balance(movements: readonly Movement[], thousandSeedWeightG: number | null = null): PacketBalance {
  if (thousandSeedWeightG !== null) requireThousandSeedWeight('balance', thousandSeedWeightG);
  let seeds: number | null = 0;
  let micrograms: number | null = 0;
  let seedsEstimated = false;
  let gramsEstimated = false;
  for (const movement of movements) {
    requireMovement(movement);
    const stated = inBothUnits(movement, thousandSeedWeightG);
    seedsEstimated ||= movement.seeds === null;
    gramsEstimated ||= movement.grams === null;
    seeds = seeds === null || stated.seeds === null ? null : seeds + stated.seeds;
    micrograms =
      micrograms === null || stated.grams === null ? null : micrograms + Math.round(stated.grams * MICROGRAMS_PER_GRAM);
  }
  return {
    seeds: seeds === null ? null : Math.round(seeds) + 0, // + 0 turns -0 into 0
    grams: micrograms === null ? null : micrograms / MICROGRAMS_PER_GRAM + 0,
    seedsEstimated: seeds !== null && seedsEstimated,
    gramsEstimated: micrograms !== null && gramsEstimated,
  };
}

/** Answer of canWithdraw: the balance that would be left, or why not, in plain words. */
export type Withdrawal =
  | { ok: true; after: PacketBalance }
  | { ok: false; reason: 'not-enough' | 'balance-unknown'; sentence: string };

/**
 * Whether an amount can be taken out of a packet without its balance going below zero in a unit that the amount states.
 *
 * @param movements            the packet's whole ledger
 * @param amount               what is to be taken: whole seeds or grams or both, each > 0 or null, at least one stated
 * @param thousandSeedWeightG  grams per 1000 seeds of its lot, > 0; null when not known
 * @returns the balance afterwards; or 'not-enough', or 'balance-unknown' when the packet was only ever counted (or only
 *          weighed), the amount is in the other unit, and no thousand-seed weight links them
 * @throws RangeError as balance does, and when the amount is not as above
 * Checked in tests/domain/stock/packet-ledger.test.ts
 */
export function canWithdraw(
  movements: readonly Movement[],
  amount: { seeds: number | null; grams: number | null },
  thousandSeedWeightG: number | null = null,
): Withdrawal {
  if (amount.seeds !== null && !(Number.isInteger(amount.seeds) && amount.seeds > 0)) {
    throw new RangeError(`canWithdraw: amount.seeds must be an integer > 0 or null, got ${amount.seeds}`);
  }
  if (amount.grams !== null && !(Number.isFinite(amount.grams) && amount.grams > 0)) {
    throw new RangeError(`canWithdraw: amount.grams must be a finite number > 0 or null, got ${amount.grams}`);
  }
  const now = balance(movements, thousandSeedWeightG);
  const out: Movement = { reason: 'sowing', seeds: negated(amount.seeds), grams: negated(amount.grams) };
  const after = balance([...movements, out], thousandSeedWeightG);
  for (const unit of ['seeds', 'grams'] as const) {
    if (amount[unit] === null) continue;
    const [held, left] = [now[unit], after[unit]];
    if (held === null || left === null) {
      const [known, wanted] = unit === 'seeds' ? ['grams', 'seeds'] : ['seeds', 'grams'];
      return {
        ok: false,
        reason: 'balance-unknown',
        sentence: `The packet is kept in ${known}; a thousand-seed weight is needed to take out ${wanted}.`,
      };
    }
    if (left < 0) {
      const name = unit === 'seeds' ? 'seeds' : 'g';
      return {
        ok: false,
        reason: 'not-enough',
        sentence: `The packet holds ${held} ${name}; ${amount[unit]} ${name} cannot be taken out.`,
      };
    }
  }
  return { ok: true, after };
}

function negated(value: number | null): number | null {
  return value === null ? null : -value;
}

function inBothUnits(movement: Movement, thousandSeedWeightG: number | null) {
  const { seeds, grams } = movement;
  if (thousandSeedWeightG === null || (seeds !== null && grams !== null)) return { seeds, grams };
  return {
    seeds: seeds ?? ((grams ?? 0) * SEEDS_PER_THOUSAND) / thousandSeedWeightG,
    grams: grams ?? ((seeds ?? 0) * thousandSeedWeightG) / SEEDS_PER_THOUSAND,
  };
}

function requireMovement({ reason, seeds, grams }: Movement): void {
  if (seeds === null && grams === null) throw new RangeError(`balance: a ${reason} states neither seeds nor grams`);
  if (seeds !== null && !Number.isInteger(seeds)) {
    throw new RangeError(`balance: seeds of a ${reason} must be an integer, got ${seeds}`);
  }
  if (grams !== null && !Number.isFinite(grams)) {
    throw new RangeError(`balance: grams of a ${reason} must be finite, got ${grams}`);
  }
  const direction = MOVEMENT_DIRECTIONS[reason];
  for (const [name, value] of [
    ['seeds', seeds],
    ['grams', grams],
  ] as const) {
    if (value === null || direction === 'either') continue;
    if (direction === 'in' ? value < 0 : value > 0) {
      throw new RangeError(`balance: a ${reason} takes seed ${direction}, so ${name} cannot be ${value}`);
    }
  }
  if (seeds !== null && grams !== null && seeds * grams < 0) {
    throw new RangeError(`balance: seeds (${seeds}) and grams (${grams}) of a ${reason} go opposite ways`);
  }
}
