import { spawn } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { reader } from '@/lib/server/database/connections';
import { useTestBank } from '../../support/test-bank';

const ROWS = 3000;

/** Starts an import in a process of its own and kills it when it has written this many rows. */
function killAfter(dataDirectory: string, rowsWritten: number): Promise<string> {
  return new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      ['--conditions=react-server', '--import', 'tsx', 'tests/support/import-in-child.ts', String(ROWS)],
      { env: { ...process.env, DATA_DIR: dataDirectory }, stdio: ['ignore', 'pipe', 'pipe'] },
    );
    let output = '';
    let errors = '';
    child.stderr.on('data', (chunk) => {
      errors += chunk;
    });
    child.stdout.on('data', (chunk) => {
      output += chunk;
      const written = [...String(output).matchAll(/writing (\d+)/g)].map((match) => Number(match[1]));
      if (written.some((count) => count >= rowsWritten)) child.kill('SIGKILL');
    });
    child.on('exit', (_code, signal) =>
      signal === 'SIGKILL' ? resolve(output) : reject(new Error(`not killed: ${errors}${output.slice(-200)}`)),
    );
  });
}

describe('an import that is killed', () => {
  const bank = useTestBank({ fresh: 'each' });

  it.each([250, 1500, 2750])('leaves nothing behind when killed after %i rows', async (rowsWritten) => {
    await killAfter(bank.directory, rowsWritten);
    expect(await reader().accession.count()).toBe(0);
    const jobs = await reader().importJob.findMany({ select: { status: true } });
    expect(jobs).toEqual([{ status: 'uploaded' }]);
  });
});
