/*
 * The likeliest share of seeds for every stretch of days, from intervals that may overlap.
 *
 * Where all dishes are inspected on the same days the answer is plain arithmetic. Where they are not, the same seed's
 * interval covers several stretches, and the shares that make the counts likeliest (Turnbull's) have no formula. They
 * are found by alternating two steps that can each only climb: an EM step (every seed is divided over its interval in
 * proportion to the present shares) and an isotonic Newton step on the cumulative curve (Wellner & Zhan's hybrid),
 * which moves share over long distances where EM creeps. Full Newton steps on the stretches that keep a share then
 * finish to rounding. The problem is concave, so the certificate at the end is proof: no shift of share can gain more
 * than the stated amount of log-likelihood.
 */
import { choleskyFactor, choleskySolve } from '../../statistics/cholesky';
import { type CoveredStretches, coveredShares } from './covered-stretches';
import { shareInformation } from './share-information';

export type LikeliestShares =
  | {
      ok: true;
      /** share of all seeds in each stretch; adds to 1 */
      shares: number[];
      logLikelihood: number;
      /** upper bound on the log-likelihood that any other shares could still gain */
      certifiedWithin: number;
    }
  | { ok: false; reason: 'did-not-converge' };

const MAX_ITERATIONS = 20_000;
/** The certificate asked for, per seed. */
const CERTIFICATE_PER_SEED = 1e-13;
/** From this certificate per seed on, Newton steps on the kept stretches are tried. */
const NEWTON_FROM_PER_SEED = 1e-4;
const NEWTON_STEPS = 30;
/** A stretch whose share is smaller than this and which the certificate does not want larger is emptied. */
const NEGLIGIBLE_SHARE = 1e-9;
const STEP_HALVINGS = 30;

/**
 * Maximum-likelihood shares over stretches, for interval-censored seeds.
 *
 * @param stretches     how many there are, integer, >= 1
 * @param observations  see CoveredStretches; every stretch is covered by at least one
 * @returns the shares with their certificate, or that they did not converge
 * @see Turnbull (1976), J. R. Stat. Soc. B 38:290-295; Wellner & Zhan (1997), J. Am. Stat. Assoc. 92:945-959;
 *      certificate: Lindsay (1983), Ann. Stat. 11:86-94 (all from memory)
 * Checked against R `survival::survfit` and EM run to rounding in R: tests/golden/germination-time-course.json
 */
export function likeliestShares(stretches: number, observations: readonly CoveredStretches[]): LikeliestShares {
  const seeds = observations.reduce((sum, observation) => sum + observation.seeds, 0);
  let shares = Array.from({ length: stretches }, () => 1 / stretches);
  for (let iteration = 0; iteration < MAX_ITERATIONS; iteration++) {
    let gap = certificate(shares, observations, seeds);
    if (gap > CERTIFICATE_PER_SEED * seeds && gap < NEWTON_FROM_PER_SEED * seeds) {
      const finished = newtonOnKept(shares, observations, seeds);
      const finishedGap = finished ? certificate(finished, observations, seeds) : Number.POSITIVE_INFINITY;
      if (finished && finishedGap < gap) {
        shares = finished;
        gap = finishedGap;
      }
    }
    if (gap <= CERTIFICATE_PER_SEED * seeds) {
      return { ok: true, shares, logLikelihood: logLikelihood(shares, observations), certifiedWithin: gap };
    }
    shares = isotonicStep(emStep(shares, observations, seeds), observations);
  }
  return { ok: false, reason: 'did-not-converge' };
}

function logLikelihood(shares: readonly number[], observations: readonly CoveredStretches[]): number {
  const covered = coveredShares(shares, observations);
  return observations.reduce((sum, { seeds }, i) => sum + seeds * Math.log(covered[i] ?? 0), 0);
}

/** Derivative of the log-likelihood with respect to each share: seeds per covered share, summed. Equals the seeds at the top. */
function pulls(shares: readonly number[], observations: readonly CoveredStretches[]): number[] {
  const covered = coveredShares(shares, observations);
  const pull = shares.map(() => 0);
  for (const [i, { first, last, seeds }] of observations.entries()) {
    const each = seeds / (covered[i] ?? 0);
    for (let stretch = first; stretch <= last; stretch++) pull[stretch] = (pull[stretch] ?? 0) + each;
  }
  return pull;
}

/** By concavity no other shares can gain more log-likelihood than the largest pull exceeds the number of seeds. */
function certificate(shares: readonly number[], observations: readonly CoveredStretches[], seeds: number): number {
  return Math.max(0, ...pulls(shares, observations).map((pull) => pull - seeds));
}

function emStep(shares: readonly number[], observations: readonly CoveredStretches[], seeds: number): number[] {
  return pulls(shares, observations).map((pull, stretch) => ((shares[stretch] ?? 0) * pull) / seeds);
}

/** One Newton step with the diagonal of the curvature on the cumulative curve, kept rising, halved until it gains. */
function isotonicStep(shares: readonly number[], observations: readonly CoveredStretches[]): number[] {
  const inner = shares.length - 1;
  if (inner < 1) return [...shares];
  const covered = coveredShares(shares, observations);
  const slope = new Array<number>(inner).fill(0);
  const curvature = new Array<number>(inner).fill(0);
  const bump = (index: number, seeds: number, share: number, sign: 1 | -1) => {
    if (index < 0 || index >= inner) return;
    slope[index] = (slope[index] ?? 0) + (sign * seeds) / share;
    curvature[index] = (curvature[index] ?? 0) + seeds / share ** 2;
  };
  for (const [i, { first, last, seeds }] of observations.entries()) {
    bump(last, seeds, covered[i] ?? 0, 1);
    bump(first - 1, seeds, covered[i] ?? 0, -1);
  }
  let sum = 0;
  const cumulative = shares.slice(0, inner).map((share) => {
    sum += share;
    return sum;
  });
  const wanted = cumulative.map((value, k) => value + (slope[k] ?? 0) / Math.max(curvature[k] ?? 0, Number.MIN_VALUE));
  const target = poolRising(wanted, curvature).map((value) => Math.min(1, Math.max(0, value)));

  const before = logLikelihood(shares, observations);
  for (let halving = 0, fraction = 1; halving < STEP_HALVINGS; halving++, fraction /= 2) {
    const moved = cumulative.map((value, k) => value + fraction * ((target[k] ?? value) - value));
    const next = [...moved, 1].map((value, k) => Math.max(0, value - (k === 0 ? 0 : (moved[k - 1] ?? 0))));
    if (logLikelihood(next, observations) > before) return next;
  }
  return [...shares];
}

/** Pool-adjacent-violators: the rising sequence closest to the values, by weighted squares. */
function poolRising(values: readonly number[], weights: readonly number[]): number[] {
  const pools: { mean: number; weight: number; length: number }[] = [];
  for (const [k, value] of values.entries()) {
    let pool = { mean: value, weight: Math.max(weights[k] ?? 0, Number.MIN_VALUE), length: 1 };
    for (let last = pools.at(-1); last && last.mean > pool.mean; last = pools.at(-1)) {
      pools.pop();
      const weight = last.weight + pool.weight;
      pool = {
        mean: last.mean + ((pool.mean - last.mean) * pool.weight) / weight,
        weight,
        length: last.length + pool.length,
      };
    }
    pools.push(pool);
  }
  return pools.flatMap(({ mean, length }) => new Array<number>(length).fill(mean));
}

/** Newton on the stretches that keep a share; null when it leaves the possible or the equations cannot be solved. */
function newtonOnKept(
  start: readonly number[],
  observations: readonly CoveredStretches[],
  seeds: number,
): number[] | null {
  const pull = pulls(start, observations);
  const isKept = start.map((share, k) => share > NEGLIGIBLE_SHARE || (pull[k] ?? 0) > seeds);
  let shares = start.map((share, k) => (isKept[k] ? share : 0));
  const total = shares.reduce((sum, share) => sum + share, 0);
  shares = shares.map((share) => share / total);
  const kept = shares.flatMap((_, k) => (isKept[k] ? [k] : []));
  const balance = kept.at(-1);
  if (balance === undefined || coveredShares(shares, observations).some((share) => share <= 0)) return null;
  const free = kept.slice(0, -1);
  for (let step = 0; step < NEWTON_STEPS && free.length > 0; step++) {
    const atShares = pulls(shares, observations);
    const factor = choleskyFactor(shareInformation(shares, observations, free, balance));
    if (!factor) return null;
    const move = choleskySolve(
      factor,
      free.map((k) => (atShares[k] ?? 0) - (atShares[balance] ?? 0)),
    );
    const next = [...shares];
    for (const [i, k] of free.entries()) next[k] = (shares[k] ?? 0) + (move[i] ?? 0);
    next[balance] = 1 - free.reduce((sum, k) => sum + (next[k] ?? 0), 0);
    if (next.some((share) => share < 0)) return null;
    const isStill = move.every((part, i) => Math.abs(part) <= 1e-16 + 4e-16 * (next[free[i] ?? 0] ?? 0));
    shares = next;
    if (isStill) break;
  }
  return shares;
}
