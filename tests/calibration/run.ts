/**
 * `npm run calibrate`: simulates collections, holds the lot model to its word and writes what came out into
 * docs/methods/calibration.md. Ends with 1 when a scenario in which the model's beliefs hold misses a level by more than
 * MOST_MISSED points, or a chance by more than MOST_CHANCE_MISSED.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { measureCalibration } from './measure-calibration';
import { worstChance, worstMiss, writeFigures } from './report';
import { SCENARIOS } from './scenarios';

const LOTS = 40_000;
/** points */
const MOST_MISSED = 1.5;
/** points; a bin holds some hundreds to thousands of lots, so that chance alone moves it by one or two */
const MOST_CHANCE_MISSED = 3;
const PAGE = path.resolve('docs/methods/calibration.md');

let holds = true;
const measured = SCENARIOS.map((scenario) => {
  const started = performance.now();
  const calibration = measureCalibration(scenario, LOTS);
  const seconds = ((performance.now() - started) / 1000).toFixed(0);
  const [missed, chanceMissed] = [worstMiss(calibration.all), worstChance(calibration.chances)];
  const isWithin = Math.abs(missed) <= MOST_MISSED && Math.abs(chanceMissed) <= MOST_CHANCE_MISSED;
  if (scenario.mustHold && !isWithin) holds = false;
  const verdict = scenario.mustHold ? (isWithin ? 'holds' : 'FAILS') : 'to know';
  process.stdout.write(
    `${verdict.padEnd(8)} ${scenario.name}: bands off by ${missed.toFixed(1)} points at most, chances by ${chanceMissed.toFixed(1)} (${seconds} s)\n`,
  );
  return { scenario, calibration };
});
const before = readFileSync(PAGE, 'utf8');
const after = writeFigures(before, measured, LOTS);
if (after !== before) writeFileSync(PAGE, after);
process.stdout.write(
  `${after === before ? 'docs/methods/calibration.md says so already.' : 'Written to docs/methods/calibration.md.'}\n`,
);
process.exit(holds ? 0 : 1);
