/** The calibration's figures as the tables of docs/methods/calibration.md. */
import { type Calibration, type ChanceBin, type Coverage, LEVELS, TEST_GROUPS } from './measure-calibration';
import type { Scenario } from './scenarios';

export interface Measured {
  scenario: Scenario;
  calibration: Calibration;
}

const BEGIN = '<!-- figures: begin, written by npm run calibrate -->';
const END = '<!-- figures: end -->';
/** Bins with fewer lots than this say nothing of ten chances in a hundred. */
const FEWEST_IN_BIN = 100;

/** Percentage points by which the coverage of a band is off its level; the worst of the four, with its sign. */
export function worstMiss({ lots, covered }: Coverage): number {
  const misses = LEVELS.map((level, index) => (100 * (covered[index] as number)) / lots - 100 * level);
  return misses.reduce((worst, miss) => (Math.abs(miss) > Math.abs(worst) ? miss : worst), 0);
}

/** Points between the chance said and what came true, in the bin where they are furthest apart. */
export function worstChance(chances: readonly ChanceBin[]): number {
  return chances
    .filter(({ lots }) => lots >= FEWEST_IN_BIN)
    .map(({ lots, said, below }) => (100 * (below - said)) / lots)
    .reduce((worst, miss) => (Math.abs(miss) > Math.abs(worst) ? miss : worst), 0);
}

/** Puts the figures into the page, between its two marks. */
export function writeFigures(page: string, measured: readonly Measured[], lots: number): string {
  const from = page.indexOf(BEGIN);
  const to = page.indexOf(END);
  if (from < 0 || to < from) throw new Error('the page has no place for the figures');
  return `${page.slice(0, from)}${BEGIN}\n\n${figures(measured, lots)}\n\n${page.slice(to)}`;
}

function figures(measured: readonly Measured[], lots: number): string {
  return [
    `${lots.toLocaleString('en').replaceAll(',', ' ')} lots in each scenario.`,
    '### Bands: how many of 100 lots lie inside',
    coverageTable(measured.map(({ scenario, calibration }) => [scenario.name, calibration.all])),
    '### The same by number of tests',
    ...measured
      .filter(({ scenario }) => scenario.mustHold || scenario.name.includes('twice'))
      .flatMap(({ scenario, calibration }) => [
        `**${scenario.name}**`,
        coverageTable(TEST_GROUPS.map((group, index) => [group, calibration.byTests[index] as Coverage])),
      ]),
    '### Chances of being below a line: said, and come true, in 100',
    chanceTable(measured),
  ].join('\n\n');
}

function coverageTable(rows: readonly (readonly [string, Coverage])[]): string {
  return table(
    ['', ...LEVELS.map((level) => `${level * 100} % band`), 'worse than the 90 % band', 'better'],
    rows.map(([name, { lots, covered, worse, better }]) => [
      name,
      ...[...covered, worse, better].map((count) => ((100 * count) / lots).toFixed(1)),
    ]),
  );
}

function chanceTable(measured: readonly Measured[]): string {
  const bins = measured[0]?.calibration.chances.map((_, index) => `${index * 10}-${index * 10 + 10}`) ?? [];
  return table(
    ['chance said', ...bins],
    measured.map(({ scenario, calibration }) => [
      scenario.name,
      ...calibration.chances.map(({ lots, said, below }) =>
        lots < FEWEST_IN_BIN ? 'few' : `${((100 * said) / lots).toFixed(1)}: ${((100 * below) / lots).toFixed(1)}`,
      ),
    ]),
  );
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map((_, index) => (index === 0 ? '---' : '---:'))), ...rows.map(line)].join('\n');
}
