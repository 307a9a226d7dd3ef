// What `npm run up`, `check`, `dev` and `bench` share. Plain Node: it begins before anything is installed.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

export const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const OLDEST_NODE = [20, 19];

process.env.NEXT_TELEMETRY_DISABLED = '1';

export function say(text) {
  process.stdout.write(`${text}\n`);
}

export function stop(text) {
  process.stderr.write(`\n${text}\n`);
  process.exit(1);
}

/** Runs a program in the project folder and stops everything when it fails. */
export function run(program, args, { env = {}, quiet = false, failure } = {}) {
  const result = spawnSync(program, args, {
    cwd: ROOT,
    env: { ...process.env, ...env },
    stdio: quiet ? ['ignore', 'pipe', 'pipe'] : ['ignore', 'inherit', 'inherit'],
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  if (result.status !== 0) {
    if (quiet) process.stderr.write(`${result.stdout ?? ''}${result.stderr ?? ''}`);
    stop(failure ?? `'${program} ${args.join(' ')}' failed.`);
  }
  return result.stdout ?? '';
}

export function requireNode() {
  const [major, minor] = process.versions.node.split('.').map(Number);
  if (major < OLDEST_NODE[0] || (major === OLDEST_NODE[0] && minor < OLDEST_NODE[1])) {
    stop(
      `Hilum needs Node ${OLDEST_NODE.join('.')} or newer; this is ${process.versions.node}. Install a newer one from your system's packages.`,
    );
  }
}

/** Installs the packages when they are missing or the lock file has changed since. */
export function ensureInstalled() {
  const stamp = path.join(ROOT, 'node_modules', '.hilum-lock');
  const lock = hashOf([path.join(ROOT, 'package-lock.json')]);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === lock) return;
  say('Installing packages (two minutes the first time) …');
  run(npm(), ['ci', '--no-audit', '--no-fund', '--loglevel=error'], {
    failure: 'Installing the packages failed; the lines above say why.',
  });
  writeFileSync(stamp, lock);
}

/** Makes the database client from the schema when either has changed. */
export function ensureGenerated() {
  const stamp = path.join(ROOT, 'generated', '.hilum-schema');
  const schema = hashOf([path.join(ROOT, 'prisma', 'schema.prisma'), path.join(ROOT, 'package-lock.json')]);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === schema) return;
  run(process.execPath, ['node_modules/prisma/build/index.js', 'generate'], {
    quiet: true,
    failure: 'Making the database client failed.',
  });
  writeFileSync(stamp, schema);
}

/** Builds the app when a source file has changed since the last build. */
export function ensureBuilt() {
  const stamp = path.join(ROOT, '.next', 'hilum-sources');
  const sources = hashOf([
    ...['app', 'lib', 'generated', 'public'].flatMap((folder) => filesUnder(path.join(ROOT, folder))),
    ...['package-lock.json', 'next.config.ts', 'postcss.config.mjs', 'tsconfig.json', 'proxy.ts', 'instrumentation.ts']
      .map((file) => path.join(ROOT, file))
      .filter(existsSync),
  ]);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === sources) return;
  say('Building (half a minute) …');
  run(process.execPath, ['node_modules/next/dist/bin/next', 'build'], {
    quiet: true,
    failure: 'The build failed; the lines above say why.',
  });
  const standalone = path.join(ROOT, '.next', 'standalone');
  cpSync(path.join(ROOT, '.next', 'static'), path.join(standalone, '.next', 'static'), { recursive: true });
  if (existsSync(path.join(ROOT, 'public')))
    cpSync(path.join(ROOT, 'public'), path.join(standalone, 'public'), { recursive: true });
  writeFileSync(stamp, sources);
}

/** Runs one of our TypeScript programs as the server would run it. */
export function typescriptArguments(file, ...args) {
  return ['--conditions=react-server', '--import', 'tsx', file, ...args];
}

/** Opens or makes the bank; gives what there is to say of it, and the setup code where accounts are wanted and none is. */
export function prepareBank(env, ...options) {
  const output = run(process.execPath, typescriptArguments('lib/cli/prepare-bank.ts', ...options), {
    env,
    quiet: true,
    failure: 'The collection could not be opened; the lines above say why.',
  });
  return JSON.parse(output.trim().split('\n').at(-1));
}

/** Starts the built server; the caller ends it. */
export function startServer(env) {
  return spawn(process.execPath, ['--enable-source-maps', '.next/standalone/server.js'], {
    cwd: ROOT,
    env: { ...process.env, NODE_ENV: 'production', ...env },
    stdio: ['ignore', 'inherit', 'inherit'],
  });
}

/** Opens the TLS door before the server; `told` is called with what it says when it is open and when anything changes. */
export function startDoor(env, told) {
  const door = spawn(process.execPath, typescriptArguments('lib/cli/open-door.ts'), {
    cwd: ROOT,
    env: { ...process.env, NODE_ENV: 'production', ...env },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  createInterface({ input: door.stdout }).on('line', (line) => told(JSON.parse(line)));
  return door;
}

/** A port of this computer that nothing listens on. */
export async function freePort() {
  const server = createServer();
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address();
  await new Promise((resolve) => server.close(resolve));
  return port;
}

/** Asks until the server answers that it is alive, or gives up. */
export async function waitUntilAlive(address, server, seconds = 60) {
  const until = Date.now() + seconds * 1000;
  while (Date.now() < until) {
    if (server.exitCode !== null) return false;
    if (await isHilumAt(address)) return true;
    await new Promise((resolve) => setTimeout(resolve, 150));
  }
  return false;
}

export async function isHilumAt(address) {
  try {
    const answer = await fetch(`${address}/api/health`, { signal: AbortSignal.timeout(2000) });
    return (await answer.json()).name === 'hilum';
  } catch {
    return false;
  }
}

/** A Chromium that the browser tests can drive; installs Debian's where none is found. */
export function ensureBrowser() {
  const found = findBrowser();
  if (found) return found;
  if (process.platform === 'linux' && existsSync('/usr/bin/apt-get') && process.getuid?.() === 0) {
    say('Installing Chromium for the browser tests (a minute) …');
    run('apt-get', ['update', '-qq'], { quiet: true });
    run('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], { quiet: true });
    const installed = findBrowser();
    if (installed) return installed;
  }
  return stop(
    "No Chromium was found for the browser tests. Install one ('apt-get install chromium', or 'npx playwright install chromium') or set CHROMIUM to its path.",
  );
}

function findBrowser() {
  const places = [
    process.env.CHROMIUM,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
    playwrightsOwn(),
  ];
  return places.find((place) => place && existsSync(place)) ?? null;
}

function playwrightsOwn() {
  const result = spawnSync(
    process.execPath,
    ['-e', "process.stdout.write(require('@playwright/test').chromium.executablePath())"],
    { cwd: ROOT, encoding: 'utf8' },
  );
  return result.status === 0 ? result.stdout : null;
}

function filesUnder(folder) {
  if (!existsSync(folder)) return [];
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const whole = path.join(folder, entry.name);
    return entry.isDirectory() ? filesUnder(whole) : [whole];
  });
}

function hashOf(files) {
  const hash = createHash('sha256');
  for (const file of [...files].sort()) {
    if (path.basename(file).startsWith('.hilum-')) continue;
    hash.update(path.relative(ROOT, file));
    hash.update(readFileSync(file));
  }
  return hash.digest('hex');
}

export function ensureFolder(folder) {
  mkdirSync(folder, { recursive: true });
  return statSync(folder).isDirectory();
}

const npm = () => (process.platform === 'win32' ? 'npm.cmd' : 'npm');
