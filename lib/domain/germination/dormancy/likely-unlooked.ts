import { edgeBetween } from '../../statistics/edge-between';
import type { SideSample } from './side-sample';

/**
 * The most likely share of hard (and fresh) seed in a lot, and the alive share of it, if the whole lot's alive share is
 * given.
 *
 * The seeds fall into classes: normal, hard and alive, hard and dead, the same for fresh, and dead. Of hard seeds that
 * were not looked at only the sum is known. With T the number of seeds that the most likely shares make alive in all, the
 * alive classes share `alive` in proportion to their counts, the dead ones share the rest, and the alive share s of the
 * seeds not looked at solves a quadratic; T itself is the one number at which all agree.
 *
 * @param input.seeds   seeds set, >= 1
 * @param input.normal  normal seedlings
 * @param input.parts   side samples with at least one seed looked at
 * @param input.alive   the lot's alive share, in [0, 1]
 * @returns for each part its share of the lot, and the alive share of it; proportions 0-1
 * @throws nothing; the caller has checked the counts
 * Checked through `aliveWithSideSamples` against R: tests/golden/side-samples.json
 */
export function likelyUnlooked({
  seeds,
  normal,
  parts,
  alive,
}: {
  seeds: number;
  normal: number;
  parts: readonly SideSample[];
  alive: number;
}): { share: number; aliveOfIt: number }[] {
  const surelyAlive = parts.reduce((sum, part) => sum + part.alive, normal);
  const aliveSharesAt = (total: number) =>
    parts.map((part) => aliveShareOf(part, alive / total, (1 - alive) / (seeds - total)));
  const mostAlive = parts.reduce((sum, part) => sum + part.seeds - part.looked, surelyAlive);
  const impliesMore = (total: number) => {
    const shares = aliveSharesAt(total);
    return (
      parts.reduce((sum, part, i) => sum + (part.seeds - part.looked) * (shares[i] as number), surelyAlive) > total
    );
  };
  // To the last digit, since the interval is built on it.
  const [from, to] = edgeBetween(impliesMore, surelyAlive, mostAlive, 0);
  const total = (from + to) / 2;
  const shares = aliveSharesAt(total);
  return parts.map((part, i) => {
    const share = shares[i] as number;
    const unlooked = part.seeds - part.looked;
    const living = part.alive + unlooked * share;
    const dead = part.looked - part.alive + unlooked * (1 - share);
    const livingShare = living === 0 ? 0 : (living * alive) / total;
    const deadShare = dead === 0 ? 0 : (dead * (1 - alive)) / (seeds - total);
    const whole = livingShare + deadShare;
    return { share: whole, aliveOfIt: whole === 0 ? 0 : livingShare / whole };
  });
}

/**
 * The root in [0, 1] of (a - b) u s^2 + (a g + b d + b u - a u) s - a g = 0: the alive share s of the u seeds not looked
 * at, where g of those looked at were alive and d dead, and a and b are the shares of the lot per alive and per dead seed.
 * Of two forms of the root that one is taken whose terms do not cancel.
 */
function aliveShareOf(part: SideSample, perAlive: number, perDead: number): number {
  // No seed alive in all, or none dead, makes one of the two infinite or undefined; then it decides alone.
  if (!Number.isFinite(perAlive)) return 1;
  if (!Number.isFinite(perDead)) return 0;
  const unlooked = part.seeds - part.looked;
  const square = (perAlive - perDead) * unlooked;
  const constant = perAlive * part.alive;
  const linear = constant + perDead * (part.looked - part.alive) - square;
  const root = Math.sqrt(Math.max(0, linear * linear + 4 * square * constant));
  if (linear < 0) return Math.min(1, (root - linear) / (2 * square));
  return linear + root === 0 ? 0 : Math.min(1, (2 * constant) / (linear + root));
}
