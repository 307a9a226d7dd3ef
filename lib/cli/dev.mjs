// `npm run dev`: the app with reloading, on its own data folder's demo.
import { spawn } from 'node:child_process';
import path from 'node:path';
import { ensureGenerated, ensureInstalled, ROOT, requireNode, run, typescriptArguments } from './steps.mjs';

requireNode();
ensureInstalled();
ensureGenerated();
const dataDirectory = path.resolve(ROOT, process.env.DATA_DIR || 'data');
const port = process.env.PORT || '4310';
run(process.execPath, typescriptArguments('lib/cli/prepare-bank.ts'), {
  env: { DATA_DIR: dataDirectory },
  quiet: true,
});
const server = spawn(
  process.execPath,
  ['node_modules/next/dist/bin/next', 'dev', '-p', port, '-H', process.env.HOST || '127.0.0.1'],
  {
    cwd: ROOT,
    env: { ...process.env, DATA_DIR: dataDirectory },
    stdio: 'inherit',
  },
);
for (const signal of ['SIGINT', 'SIGTERM']) process.on(signal, () => server.kill(signal));
server.on('exit', (code) => process.exit(code ?? 0));
