// `npm run check`: everything that must hold, on a fresh machine. Its last lines say what was executed.
import { spawnSync } from 'node:child_process';
import { readFileSync, rmSync } from 'node:fs';
import path from 'node:path';
import {
  ensureBrowser,
  ensureBuilt,
  ensureFolder,
  ensureGenerated,
  ensureInstalled,
  ROOT,
  requireNode,
  say,
} from './steps.mjs';

requireNode();
ensureInstalled();
ensureGenerated();
const chromium = ensureBrowser();
const results = path.join(ROOT, 'test-results');
ensureFolder(results);

const node = (...args) => [process.execPath, args];
const steps = [
  {
    name: 'types',
    commands: [node('node_modules/next/dist/bin/next', 'typegen'), node('node_modules/typescript/bin/tsc', '--noEmit')],
  },
  { name: 'lint', commands: [node('node_modules/@biomejs/biome/bin/biome', 'check', '--error-on-warnings', '.')] },
  {
    name: 'imports point one way',
    commands: [
      node(
        'node_modules/dependency-cruiser/bin/dependency-cruise.mjs',
        'app',
        'lib',
        'seed-demo',
        '--config',
        '.dependency-cruiser.cjs',
      ),
    ],
  },
  {
    name: 'schema and migrations agree',
    commands: [
      node(
        'node_modules/prisma/build/index.js',
        'migrate',
        'diff',
        '--from-migrations',
        'prisma/migrations',
        '--to-schema',
        'prisma/schema.prisma',
        '--exit-code',
      ),
    ],
    // A schema engine that falls over makes Prisma leave with 0 and say nothing.
    says: 'No difference detected',
  },
  {
    name: 'unit, property and golden tests',
    report: path.join(results, 'unit.json'),
    count: countUnit,
    commands: [
      node(
        'node_modules/vitest/vitest.mjs',
        'run',
        '--reporter=default',
        '--reporter=json',
        `--outputFile.json=${path.join(results, 'unit.json')}`,
      ),
    ],
  },
  {
    name: 'browser tests',
    report: path.join(results, 'browser.json'),
    count: countBrowser,
    before: ensureBuilt,
    commands: [node('node_modules/@playwright/test/cli.js', 'test')],
    env: { CHROMIUM: chromium, PLAYWRIGHT_JSON_OUTPUT_FILE: path.join(results, 'browser.json') },
  },
];

const outcomes = [];
for (const step of steps) {
  say(`\n== ${step.name}`);
  const started = Date.now();
  if (step.report) rmSync(step.report, { force: true });
  step.before?.();
  const ok = step.commands.every((command) => holds(command, step));
  const tests = step.count ? step.count(step.report) : null;
  outcomes.push({
    name: step.name,
    ok: ok && (!tests || tests.passed > 0),
    tests,
    seconds: Math.round((Date.now() - started) / 1000),
  });
}

say('\nWhat was checked');
for (const { name, ok, tests, seconds } of outcomes) {
  const counted = tests ? `: ${tests.passed} passed, ${tests.failed} failed, ${tests.skipped} skipped` : '';
  say(`  ${ok ? 'holds' : 'FAILS'}  ${name}${counted} (${seconds} s)`);
}
const passed = sum('passed') + outcomes.filter((outcome) => !outcome.tests && outcome.ok).length;
const failed = sum('failed') + outcomes.filter((outcome) => !outcome.ok && !outcome.tests?.failed).length;
say(`${passed} passed, ${failed} failed`);
process.exit(outcomes.every((outcome) => outcome.ok) ? 0 : 1);

/** Whether a command ends well and, where a step names what it says then, says so. */
function holds([program, args], { env, says }) {
  const { status, stdout } = spawnSync(program, args, {
    cwd: ROOT,
    stdio: ['ignore', says ? 'pipe' : 'inherit', 'inherit'],
    env: { ...process.env, ...env },
    encoding: 'utf8',
  });
  if (says) process.stdout.write(stdout);
  return status === 0 && (!says || stdout.includes(says));
}

function sum(field) {
  return outcomes.reduce((total, { tests }) => total + (tests?.[field] ?? 0), 0);
}

function countUnit(file) {
  const report = readJson(file);
  return {
    passed: report.numPassedTests ?? 0,
    failed: report.numFailedTests ?? 0,
    skipped: (report.numPendingTests ?? 0) + (report.numTodoTests ?? 0),
  };
}

function countBrowser(file) {
  const { stats = {} } = readJson(file);
  return {
    passed: (stats.expected ?? 0) + (stats.flaky ?? 0),
    failed: stats.unexpected ?? 0,
    skipped: stats.skipped ?? 0,
  };
}

function readJson(file) {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return {};
  }
}
