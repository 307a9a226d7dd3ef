// `npm run up`: installs what is missing, migrates, loads the demo on the first run, builds, serves, prints the address.
import path from 'node:path';
import {
  ensureBuilt,
  ensureGenerated,
  ensureInstalled,
  isHilumAt,
  prepareBank,
  ROOT,
  requireNode,
  say,
  startServer,
  stop,
  waitUntilAlive,
} from './steps.mjs';

const USAGE = `npm run up [-- --empty]

  --empty   begin with an empty bank instead of the demo collection (first run only)

Environment: PORT (4310), HOST (127.0.0.1: this computer only, no sign-in; any other address asks for accounts),
DATA_DIR (./data: the one folder to back up).`;

if (process.argv.includes('--help')) {
  say(USAGE);
  process.exit(0);
}

requireNode();
const host = process.env.HOST || '127.0.0.1';
const port = process.env.PORT || '4310';
const dataDirectory = path.resolve(ROOT, process.env.DATA_DIR || 'data');
const address = `http://${host === '0.0.0.0' || host === '::' || host === '127.0.0.1' ? 'localhost' : host}:${port}`;

if (await isHilumAt(address)) {
  say(`Hilum is already running: ${address}`);
  process.exit(0);
}

ensureInstalled();
ensureGenerated();
const prepared = prepareBank({ DATA_DIR: dataDirectory, HOST: host }, ...process.argv.slice(2));
for (const line of prepared.notes) say(line);
ensureBuilt();

const server = startServer({
  DATA_DIR: dataDirectory,
  HOST: host,
  HOSTNAME: host,
  PORT: port,
  HILUM_SETUP_CODE: prepared.setupCode ?? '',
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
server.on('exit', (code, signal) => process.exit(code ?? (signal ? 0 : 1)));

if (!(await waitUntilAlive(address, server))) {
  server.kill();
  stop(`Hilum did not start. If port ${port} is taken by another program, choose another: PORT=4311 npm run up`);
}
say(`\nHilum is open at ${address}`);
if (prepared.setupCode)
  say(`First visit: make the steward's account at ${address}/welcome with the setup code ${prepared.setupCode}`);
say('Stop it with Ctrl+C. The collection is in the data folder; back that up.');
