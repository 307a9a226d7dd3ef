// `npm run dev`: the app with reloading, on its own data folder's demo. It speaks plain http, so it listens on this
// computer alone; HOST only decides whether it asks for accounts.
import { spawn } from 'node:child_process';
import path from 'node:path';
import { ensureGenerated, ensureInstalled, prepareBank, ROOT, requireNode, say } from './steps.mjs';

requireNode();
ensureInstalled();
ensureGenerated();
const dataDirectory = path.resolve(ROOT, process.env.DATA_DIR || 'data');
const port = process.env.PORT || '4310';
const host = process.env.HOST || '127.0.0.1';
const prepared = prepareBank({ DATA_DIR: dataDirectory, HOST: host });
for (const line of prepared.notes) say(line);
if (prepared.setupCode) say(`First visit: /welcome, with the setup code ${prepared.setupCode}`);
const server = spawn(process.execPath, ['node_modules/next/dist/bin/next', 'dev', '-p', port, '-H', '127.0.0.1'], {
  cwd: ROOT,
  env: {
    ...process.env,
    DATA_DIR: dataDirectory,
    HOST: host,
    HOSTNAME: '127.0.0.1',
    HILUM_SETUP_CODE: prepared.setupCode ?? '',
  },
  stdio: 'inherit',
});
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
server.on('exit', (code) => process.exit(code ?? 0));
