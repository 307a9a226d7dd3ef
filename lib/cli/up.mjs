// `npm run up`: installs what is missing, migrates, loads the demo on the first run, builds, serves, prints the address.
import path from 'node:path';
import {
  ensureBuilt,
  ensureGenerated,
  ensureInstalled,
  freePort,
  isHilumAt,
  prepareBank,
  ROOT,
  requireNode,
  say,
  startDoor,
  startServer,
  stop,
  waitUntilAlive,
} from './steps.mjs';

const USAGE = `npm run up [-- --empty]

  --empty   begin with an empty bank instead of the demo collection (first run only)

Environment
  PORT           port of the address (4310)
  HOST           127.0.0.1: this computer only, no sign-in. Any other address, such as 0.0.0.0 for all, lets phones and
                 other computers in over https and asks for accounts
  DATA_DIR       the one folder to back up (./data)
  TLS_CERT, TLS_KEY
                 PEM files of a certificate of your own for https; without them the bank makes one, and each phone is
                 told once to trust it
  HILUM_ADDRESS  the address people use, where it is another: https://seeds.example.org. With HOST left out it is that of
                 a proxy on this computer, which passes on to http://127.0.0.1:PORT with the Host header; asks for accounts`;

if (process.argv.includes('--help')) {
  say(USAGE);
  process.exit(0);
}

requireNode();
const host = process.env.HOST || '127.0.0.1';
const port = process.env.PORT || '4310';
const forOthers = !['127.0.0.1', 'localhost', '::1'].includes(host);
const dataDirectory = path.resolve(ROOT, process.env.DATA_DIR || 'data');
const address = `http://localhost:${port}`;

if (await isHilumAt(address)) {
  say(`Hilum is already running: ${address}`);
  process.exit(0);
}

ensureInstalled();
ensureGenerated();
const files = { DATA_DIR: dataDirectory, ...absolute('TLS_CERT'), ...absolute('TLS_KEY') };
const prepared = prepareBank({ ...files, HOST: host }, ...process.argv.slice(2));
for (const line of prepared.notes) say(line);
ensureBuilt();

const running = [];
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => endAll(signal));

const innerPort = forOthers ? String(await freePort()) : port;
const opened = forOthers ? await openDoor() : null;
const server = startServer({
  ...files,
  HOST: host,
  // It speaks plain http: only this computer may reach it. Others come through the door.
  HOSTNAME: forOthers ? '127.0.0.1' : host,
  PORT: innerPort,
  HILUM_TLS_PORT: forOthers ? port : '',
  HILUM_SETUP_CODE: prepared.setupCode ?? '',
});
follow(server);

if (!(await waitUntilAlive(forOthers ? `http://127.0.0.1:${innerPort}` : address, server))) {
  endAll('SIGTERM');
  stop(`Hilum did not start. If port ${port} is taken by another program, choose another: PORT=4311 npm run up`);
}
say(`\nHilum is open at ${address}`);
if (opened) sayForPhones(opened);
else if (process.env.HILUM_ADDRESS)
  say(`The proxy for ${process.env.HILUM_ADDRESS} passes on to it, with the Host header.`);
if (prepared.setupCode)
  say(`First visit: make the steward's account at ${address}/welcome with the setup code ${prepared.setupCode}`);
say('Stop it with Ctrl+C. The collection is in the data folder; back that up.');

/** The TLS door: gives what it says when it is open. What it says later, when addresses change, is passed on. */
function openDoor() {
  return new Promise((resolve) => {
    let isOpen = false;
    const door = startDoor({ ...files, HOST: host, PORT: port, HILUM_INNER_PORT: innerPort }, (told) => {
      for (const note of told.notes) say(note);
      if (isOpen) sayForPhones(told);
      isOpen = true;
      resolve(told);
    });
    door.on('exit', (code) => {
      if (!isOpen && code !== 0) stop(`Phones could not be let in, so Hilum did not start; the line above says why.`);
    });
    follow(door);
  });
}

function sayForPhones({ addresses, fingerprint }) {
  const [first, ...others] = addresses;
  if (!first) {
    say('No address was found at which phones could reach this computer. Is it in a network?');
    return;
  }
  say(`On phones:       ${first}${others.length > 0 ? `   or ${others.join(' ')}` : ''}`);
  say(`A new phone:     ${address}/phone shows a code to scan and what to do on the phone`);
  if (fingerprint)
    say(`Its fingerprint: ${fingerprint}\n                 (to compare when a phone is told to trust this bank)`);
}

/** One that ends takes the other with it. */
function follow(program) {
  running.push(program);
  program.on('exit', (code, signal) => {
    endAll('SIGTERM');
    process.exit(code ?? (signal ? 0 : 1));
  });
}

function endAll(signal) {
  for (const program of running) if (program.exitCode === null && program.signalCode === null) program.kill(signal);
}

/** The server works in another folder than this program. */
function absolute(variable) {
  return process.env[variable] ? { [variable]: path.resolve(ROOT, process.env[variable]) } : {};
}
