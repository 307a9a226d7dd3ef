/**
 * `npx tsx tests/calibration/uneven-dishes-coverage.ts [tests]`: how often 95 % intervals hold the truth when the dishes
 * of a test are uneven, by simulation with a fixed seed. Prints the table of docs/methods/germination-interval.md.
 */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { replicateHeterogeneity } from '../../lib/domain/germination/heterogeneity';
import { binomialInterval } from '../../lib/domain/statistics/binomial-interval';
import { chiSquareUpperTail } from '../../lib/domain/statistics/chi-square';
import type { DishCount } from '../../lib/domain/statistics/uneven-dishes-likelihood';
import { unevenDishesProfile } from '../../lib/domain/statistics/uneven-dishes-profile';

const RNG_SEED = 20261125;
/** From here on screens call dishes uneven and show the wider interval. */
const UNEVEN_P_VALUE = 0.05;
const SHAPES: [dishes: number, seeds: number][] = [
  [2, 50],
  [2, 100],
  [4, 25],
  [4, 50],
  [4, 100],
  [8, 50],
];
const CORRELATIONS = [0, 0.005, 0.02, 0.05, 0.1];
const GERMINATION = 0.85;

const tests = Number(process.argv[2] ?? 2000);
const generator = xoroshiro128plus(RNG_SEED);
const uniform = () => uniformFloat64(generator);

/** Marsaglia & Tsang 2000, for the beta chances of dishes. */
function gamma(shape: number): number {
  if (shape < 1) return gamma(shape + 1) * uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  for (;;) {
    const normal = Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
    const v = (1 + normal / Math.sqrt(9 * d)) ** 3;
    if (v > 0 && Math.log(1 - uniform()) < 0.5 * normal * normal + d - d * v + d * Math.log(v)) return d * v;
  }
}

function dish(seeds: number, correlation: number): DishCount {
  let chance = GERMINATION;
  if (correlation > 0) {
    const alive = gamma((GERMINATION * (1 - correlation)) / correlation);
    chance = alive / (alive + gamma(((1 - GERMINATION) * (1 - correlation)) / correlation));
  }
  let successes = 0;
  for (let seed = 0; seed < seeds; seed++) if (uniform() < chance) successes++;
  return { successes, trials: seeds };
}

const logOdds = Math.log(GERMINATION / (1 - GERMINATION));
const percent = (count: number, of: number) => (of < 50 ? '-' : ((100 * count) / of).toFixed(1));

process.stdout.write(`${tests} tests a line, ${GERMINATION * 100} % germination, seed ${RNG_SEED}\n`);
for (const [dishes, seeds] of SHAPES) {
  for (const correlation of CORRELATIONS) {
    const count = { wilson: 0, profile: 0, shown: 0, wilsonShown: 0, profileShown: 0 };
    for (let test = 0; test < tests; test++) {
      const drawn = Array.from({ length: dishes }, () => dish(seeds, correlation));
      const successes = drawn.reduce((sum, one) => sum + one.successes, 0);
      const trials = dishes * seeds;
      const { lower, upper } = binomialInterval({ successes, trials });
      const wilson = lower <= GERMINATION && GERMINATION <= upper;
      // Inside the interval means: the truth explains the dishes nearly as well as the best mean. No bound is needed.
      const isEnd = successes === 0 || successes === trials;
      const profile = isEnd ? null : unevenDishesProfile(drawn);
      const excess = profile ? 2 * (profile.best.logLikelihood - profile.at(logOdds).logLikelihood) : Number.NaN;
      const held = profile ? chiSquareUpperTail(Math.max(0, excess), 1) >= 0.05 : wilson;
      const p = replicateHeterogeneity(drawn.map((one) => ({ seeds: one.trials, normal: one.successes })))?.pValue ?? 1;
      if (wilson) count.wilson++;
      if (held) count.profile++;
      if (p < UNEVEN_P_VALUE) {
        count.shown++;
        if (wilson) count.wilsonShown++;
        if (held) count.profileShown++;
      }
    }
    process.stdout.write(
      `| ${dishes} x ${seeds} | ${correlation} | ${percent(count.wilson, tests)} | ${percent(count.profile, tests)} | ` +
        `${percent(count.shown, tests)} | ${percent(count.wilsonShown, count.shown)} | ${percent(count.profileShown, count.shown)} |\n`,
    );
  }
}
