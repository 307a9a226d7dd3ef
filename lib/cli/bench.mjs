// `npm run bench`: how long judging takes as a collection grows, how fast its long lists come over HTTP, how fast a
// logger's file is imported, and how soon the bench answers a finger.
import { cpSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { cpus, tmpdir } from 'node:os';
import path from 'node:path';
import {
  ensureBuilt,
  ensureFolder,
  ensureGenerated,
  ensureInstalled,
  isHilumAt,
  prepareBank,
  ROOT,
  requireNode,
  run,
  say,
  startServer,
  stop,
  typescriptArguments,
  waitUntilAlive,
} from './steps.mjs';

const USAGE = `npm run bench [-- --judging | --pages | --readings | --taps]

  --judging   only the judging of 1,000, 10,000 and 100,000 lots (some minutes)
  --pages     only the lists over HTTP, with 10,000 lots
  --readings  only the import of a logger's file of 500,000 rows
  --taps      only how soon the bench answers a finger, with 200 trays on a processor slowed down four times

Environment: PORT (4390), the first port tried for the server. Writes test-results/bench.json.`;
const SIZES = [1000, 10_000, 100_000];
const LOTS_FOR_PAGES = 10_000;
const FIRST_PORT = Number(process.env.PORT || 4390);
const PORTS_TRIED = 20;
const MOST_DELAY_MS = 50;

if (process.argv.includes('--help')) {
  say(USAGE);
  process.exit(0);
}
const PARTS = ['judging', 'pages', 'readings', 'taps'];
const asked = PARTS.filter((part) => process.argv.includes(`--${part}`));
const wants = (part) => asked.length === 0 || asked.includes(part);
const wantsJudging = wants('judging');
const wantsPages = wants('pages');

requireNode();
ensureInstalled();
ensureGenerated();
if (wantsPages || wants('taps')) ensureBuilt();

const folder = mkdtempSync(path.join(tmpdir(), 'hilum-bench-'));
let server;
process.on('exit', () => {
  server?.kill();
  rmSync(folder, { recursive: true, force: true });
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => process.exit(1));

const STORES_FOLDER = 'stores';
const readings = wants('readings') ? importReadings() : null;
if (readings) sayReadings(readings);
if (wantsJudging || wantsPages) writeStores();
const judging = (wantsJudging ? SIZES : wantsPages ? [LOTS_FOR_PAGES] : []).map(judge);
if (wantsJudging) {
  const tailEvaluationsPerLot = countTailEvaluations();
  for (const row of judging) row.tailEvaluationsPerLot = tailEvaluationsPerLot;
  sayJudging(judging);
}
const pages = wantsPages ? await measurePages(dataFolder(LOTS_FOR_PAGES)) : [];
if (wantsPages) sayPages(pages);
const taps = wants('taps') ? await measureTaps() : [];
if (wants('taps')) sayTaps(taps);

const results = path.join(ROOT, 'test-results');
ensureFolder(results);
const machine = { processor: cpus()[0]?.model, cores: cpus().length, node: process.versions.node };
writeFileSync(
  path.join(results, 'bench.json'),
  `${JSON.stringify({ machine, readings, judging, pages, taps }, null, 2)}\n`,
);
say('\nWritten to test-results/bench.json.');
process.exit(0);

function dataFolder(name) {
  return path.join(folder, String(name));
}

/** The stores with their readings, which all sizes share. */
function writeStores() {
  say('Writing five years of hourly readings of 20 stores …');
  ensureFolder(dataFolder(STORES_FOLDER));
  lastLineOf(typescriptArguments('tests/bench/judging.ts', '--stores'), { DATA_DIR: dataFolder(STORES_FOLDER) });
}

function importReadings() {
  say("Importing a logger's file of 500,000 rows …");
  ensureFolder(dataFolder('readings'));
  return lastLineOf(typescriptArguments('tests/bench/readings.ts'), { DATA_DIR: dataFolder('readings') });
}

/** Each size in a process of its own, so that none finds the machine code or the store climates of another. */
function judge(lots) {
  say(`Judging ${lots} lots …`);
  cpSync(dataFolder(STORES_FOLDER), dataFolder(lots), { recursive: true });
  return lastLineOf(typescriptArguments('tests/bench/judging.ts', String(lots)), { DATA_DIR: dataFolder(lots) });
}

/** The collections grow by the same rules, so what a lot of the smallest takes holds for all. */
function countTailEvaluations() {
  return lastLineOf(typescriptArguments('tests/bench/tail-evaluations.ts'), { DATA_DIR: dataFolder(SIZES[0]) })
    .tailEvaluationsPerLot;
}

function measurePages(dataDirectory) {
  say('Asking for pages …');
  return askServer('tests/bench/pages.ts', { DATA_DIR: dataDirectory });
}

/** The demo's lots with 200 trays on them, on a day of the demo. */
function measureTaps() {
  say('Tapping at the bench …');
  const env = { DATA_DIR: dataFolder('taps'), HILUM_TODAY: '2026-11-25' };
  ensureFolder(env.DATA_DIR);
  prepareBank({ ...env, HOST: '127.0.0.1' });
  lastLineOf(typescriptArguments('tests/bench/open-trays.ts'), env);
  return askServer('tests/bench/taps.ts', env);
}

/** Starts the built app on a bank and has a program ask it; the program's first argument is the address. */
async function askServer(program, env) {
  const port = await freePort();
  const address = `http://127.0.0.1:${port}`;
  server = startServer({ ...env, HOST: '127.0.0.1', HOSTNAME: '127.0.0.1', PORT: String(port) });
  if (!(await waitUntilAlive(address, server))) stop(`The server did not start on port ${port}.`);
  const figures = lastLineOf(typescriptArguments(program, address));
  server.kill();
  return figures;
}

async function freePort() {
  for (let port = FIRST_PORT; port < FIRST_PORT + PORTS_TRIED; port += 1) {
    if (!(await isHilumAt(`http://127.0.0.1:${port}`))) return port;
  }
  return stop(`All ports from ${FIRST_PORT} on are taken by other banks.`);
}

function lastLineOf(programArguments, env = {}) {
  return JSON.parse(run(process.execPath, programArguments, { env, quiet: true }).trim().split('\n').at(-1));
}

function sayJudging(rows) {
  say('\nJudging: 3 tests a lot, 20 stores with five years of hourly readings. Seconds; processor time in brackets.');
  sayTable(
    ['lots', 'load', 'evaluate', 'again', 'write', 'us a lot', 'x floor', 'peak MB'],
    rows.map(({ lots, load, evaluate, evaluateAgain, write, peakMemoryMegabytes, ...row }) => [
      lots,
      ...[load, evaluate, evaluateAgain, write].map(
        ({ seconds, cpuSeconds }) => `${seconds.toFixed(2)} (${cpuSeconds.toFixed(2)})`,
      ),
      ((evaluateAgain.cpuSeconds / lots) * 1e6).toFixed(0),
      (evaluateAgain.cpuSeconds / lots / floorSecondsPerLot(row)).toFixed(1),
      peakMemoryMegabytes.toFixed(0),
    ]),
  );
  say(
    "'evaluate' also reads and integrates the stores' readings; 'again' has them at hand, and 'us a lot' is its time.",
  );
  const [small, middle, large] = rows;
  say(
    `The floor is a bare loop of as many normal tails as a lot takes, ${large.tailEvaluationsPerLot.toFixed(0)} at ${large.nanosecondsPerTail.toFixed(1)} ns each: ${(floorSecondsPerLot(large) * 1e6).toFixed(1)} us a lot, measured in the same process.`,
  );
  const growth = (from, to, total) => Math.log(total(to) / total(from)) / Math.log(to.lots / from.lots);
  const again = (row) => row.evaluateAgain.cpuSeconds;
  for (const [from, to] of [
    [small, middle],
    [middle, large],
  ]) {
    say(
      `From ${from.lots} to ${to.lots} lots time grows as lots to the power ${growth(from, to, again).toFixed(2)} (evaluating again), ${growth(from, to, allTogether).toFixed(2)} (load, evaluate and write).`,
    );
  }
}

function floorSecondsPerLot({ tailEvaluationsPerLot, nanosecondsPerTail }) {
  return (tailEvaluationsPerLot * nanosecondsPerTail) / 1e9;
}

function allTogether({ load, evaluate, write }) {
  return load.cpuSeconds + evaluate.cpuSeconds + write.cpuSeconds;
}

function sayReadings({ rows, megabytes, longestHoldUpMilliseconds, peakMemoryMegabytes, ...taken }) {
  say(
    `\nA logger's file of ${rows} rows, ${megabytes.toFixed(1)} MB. Seconds; processor time in brackets; the best of three.`,
  );
  const names = {
    import: 'imported by the command',
    importAgain: 'the same file again',
    read: 'read, without writing',
    bareParse: 'bare parse: lines, cells, numbers',
    bareInsert: 'bare insert: one statement, one transaction',
  };
  sayTable(
    ['', 'seconds', 'rows a second'],
    Object.entries(names).map(([key, name]) => [
      name,
      `${taken[key].seconds.toFixed(2)} (${taken[key].cpuSeconds.toFixed(2)})`,
      Math.round(rows / taken[key].cpuSeconds),
    ]),
  );
  const times = (one, other) => (taken[one].cpuSeconds / taken[other].cpuSeconds).toFixed(2);
  say(
    `By processor time the import takes ${times('import', 'bareParse')} times a bare parse and ${times('import', 'bareInsert')} times a bare insert; reading alone ${times('read', 'bareParse')} times a bare parse.`,
  );
  say(
    `Nobody waited longer than ${longestHoldUpMilliseconds.toFixed(0)} ms for the server meanwhile; peak memory ${peakMemoryMegabytes.toFixed(0)} MB.`,
  );
}

function sayPages(rows) {
  say('\nPages of 10,000 lots over loopback, 4 connections at once. Milliseconds.');
  sayTable(
    ['page', 'p50', 'p95', 'p99', 'a second', 'KB'],
    rows.map(({ name, p50, p95, p99, requestsPerSecond, kilobytes }) => [
      name,
      ...[p50, p95, p99, requestsPerSecond, kilobytes].map((figure) => figure.toFixed(0)),
    ]),
  );
}

function sayTaps(rows) {
  say(
    '\nThe bench with 200 trays, processor slowed down 4 times: milliseconds from touch to next paint, in steps of 8.',
  );
  sayTable(
    ['tap', 'taps', 'shortest', 'p50', 'p95', 'longest', 'handlers p50', 'longest'],
    rows.map(({ name, ...row }) => [
      name,
      ...[row.taps, row.shortest, row.p50, row.p95, row.longest, row.processingP50, row.longestProcessing].map(
        (figure) => figure.toFixed(0),
      ),
    ]),
  );
  say(`The aim is under ${MOST_DELAY_MS} ms. Less than 16 ms is not reported and stands as 16.`);
  const slow = rows.filter(({ p95 }) => p95 >= MOST_DELAY_MS);
  if (slow.length > 0) say(`Slower: ${slow.map(({ name }) => name).join(', ')}.`);
}

function sayTable(head, rows) {
  const widths = head.map((title, column) => Math.max(title.length, ...rows.map((row) => String(row[column]).length)));
  for (const row of [head, ...rows]) {
    say(
      row
        .map((cell, column) => (column === 0 ? String(cell).padEnd(widths[0]) : String(cell).padStart(widths[column])))
        .join('  '),
    );
  }
}
