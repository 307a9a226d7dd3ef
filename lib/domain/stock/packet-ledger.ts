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
  weightG: number | null;
}

/** What a packet holds. null: not known in that unit. `seedsEstimated`: some of the seeds were weighed, not counted. */
export interface PacketBalance {
  seeds: number | null;
  weightG: number | null;
  seedsEstimated: boolean;
  weightEstimated: boolean;
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
  let weightEstimated = false;
  for (const movement of movements) {
    requireMovement(movement);
    const stated = inBothUnits(movement, thousandSeedWeightG);
    seedsEstimated ||= movement.seeds === null;
    weightEstimated ||= movement.weightG === null;
    seeds = seeds === null || stated.seeds === null ? null : seeds + stated.seeds;
    micrograms =
      micrograms === null || stated.weightG === null
        ? null
        : micrograms + Math.round(stated.weightG * MICROGRAMS_PER_GRAM);
  }
  return {
    seeds: seeds === null ? null : Math.round(seeds) + 0, // + 0 turns -0 into 0
    weightG: micrograms === null ? null : micrograms / MICROGRAMS_PER_GRAM + 0,
    seedsEstimated: seeds !== null && seedsEstimated,
    weightEstimated: micrograms !== null && weightEstimated,
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
  amount: { seeds: number | null; weightG: number | null },
  thousandSeedWeightG: number | null = null,
): Withdrawal {
  if (amount.seeds !== null && !(Number.isInteger(amount.seeds) && amount.seeds > 0)) {
    throw new RangeError(`canWithdraw: amount.seeds must be an integer > 0 or null, got ${amount.seeds}`);
  }
  if (amount.weightG !== null && !(Number.isFinite(amount.weightG) && amount.weightG > 0)) {
    throw new RangeError(`canWithdraw: amount.weightG must be a finite number > 0 or null, got ${amount.weightG}`);
  }
  const now = balance(movements, thousandSeedWeightG);
  const out: Movement = { reason: 'sowing', seeds: negated(amount.seeds), weightG: negated(amount.weightG) };
  const after = balance([...movements, out], thousandSeedWeightG);
  for (const unit of ['seeds', 'weightG'] as const) {
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
  const { seeds, weightG } = movement;
  if (thousandSeedWeightG === null || (seeds !== null && weightG !== null)) return { seeds, weightG };
  return {
    seeds: seeds ?? ((weightG ?? 0) * SEEDS_PER_THOUSAND) / thousandSeedWeightG,
    weightG: weightG ?? ((seeds ?? 0) * thousandSeedWeightG) / SEEDS_PER_THOUSAND,
  };
}

function requireMovement({ reason, seeds, weightG }: Movement): void {
  if (seeds === null && weightG === null) throw new RangeError(`balance: a ${reason} states neither seeds nor weightG`);
  if (seeds !== null && !Number.isInteger(seeds)) {
    throw new RangeError(`balance: seeds of a ${reason} must be an integer, got ${seeds}`);
  }
  if (weightG !== null && !Number.isFinite(weightG)) {
    throw new RangeError(`balance: weightG of a ${reason} must be finite, got ${weightG}`);
  }
  const direction = MOVEMENT_DIRECTIONS[reason];
  for (const [name, value] of [
    ['seeds', seeds],
    ['weightG', weightG],
  ] as const) {
    if (value === null || direction === 'either') continue;
    if (direction === 'in' ? value < 0 : value > 0) {
      throw new RangeError(`balance: a ${reason} takes seed ${direction}, so ${name} cannot be ${value}`);
    }
  }
  if (seeds !== null && weightG !== null && seeds * weightG < 0) {
    throw new RangeError(`balance: seeds (${seeds}) and weightG (${weightG}) of a ${reason} go opposite ways`);
  }
}
