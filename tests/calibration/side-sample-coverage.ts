/**
 * `npx tsx tests/calibration/side-sample-coverage.ts [tests]`: how often the 95 % interval of the alive share holds the
 * truth when only part of the hard seed was looked at, by simulation with a fixed seed. Prints the table of
 * docs/methods/hard-and-dormant-seed.md.
 */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { aliveWithSideSamples } from '../../lib/domain/germination/dormancy/side-samples';
import { binomialInterval } from '../../lib/domain/statistics/binomial-interval';

const RNG_SEED = 20261125;
/** seeds set, share normal, share hard, alive share of the hard, hard seeds looked at, at most */
const SETTINGS: [seeds: number, normal: number, hard: number, aliveOfHard: number, looked: number][] = [
  [100, 0.6, 0.3, 0.8, 5],
  [100, 0.6, 0.3, 0.8, 10],
  [100, 0.6, 0.3, 0.95, 5],
  [100, 0.6, 0.3, 0.95, 10],
  [100, 0.6, 0.35, 0.98, 10],
  [200, 0.3, 0.6, 0.9, 10],
  [200, 0.3, 0.6, 0.9, 25],
  [400, 0.8, 0.1, 0.9, 10],
  [50, 0.4, 0.5, 0.9, 5],
];

const tests = Number(process.argv[2] ?? 2000);
const generator = xoroshiro128plus(RNG_SEED);
const uniform = () => uniformFloat64(generator);
const percent = (count: number) => ((100 * count) / tests).toFixed(1);

process.stdout.write(`${tests} tests a line, seed ${RNG_SEED}\n`);
for (const [seeds, normalShare, hardShare, aliveOfHard, lookedAtMost] of SETTINGS) {
  const truth = normalShare + hardShare * aliveOfHard;
  let held = 0;
  let heldAsIfAllLooked = 0;
  for (let test = 0; test < tests; test++) {
    let normal = 0;
    let hard = 0;
    for (let seed = 0; seed < seeds; seed++) {
      const draw = uniform();
      if (draw < normalShare) normal++;
      else if (draw < normalShare + hardShare) hard++;
    }
    const looked = Math.min(hard, lookedAtMost);
    let alive = 0;
    for (let seed = 0; seed < looked; seed++) if (uniform() < aliveOfHard) alive++;
    const found = aliveWithSideSamples({
      seeds,
      normal,
      hard: { seeds: hard, looked, alive },
      fresh: { seeds: 0, looked: 0, alive: 0 },
    });
    if (found.ok && found.lower <= truth && truth <= found.upper) held++;
    const carried = Math.round(normal + (looked === 0 ? 0 : (hard * alive) / looked));
    const wilson = binomialInterval({ successes: carried, trials: seeds });
    if (wilson.lower <= truth && truth <= wilson.upper) heldAsIfAllLooked++;
  }
  process.stdout.write(
    `| ${seeds} | ${normalShare * 100} | ${hardShare * 100} | ${aliveOfHard * 100} | ${lookedAtMost} | ${percent(held)} | ${percent(heldAsIfAllLooked)} |\n`,
  );
}
