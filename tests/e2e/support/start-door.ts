import { type ChildProcess, spawn } from 'node:child_process';
import { createHash, X509Certificate } from 'node:crypto';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline';

interface DoorOptions {
  dataDirectory: string;
  port: number;
  innerPort: number;
  env: Record<string, string>;
}

/** Opens the TLS door that `npm run up` puts before the server, on this computer alone. */
export async function startDoor({ dataDirectory, port, innerPort, env }: DoorOptions): Promise<ChildProcess> {
  const door = spawn(process.execPath, ['--conditions=react-server', '--import', 'tsx', 'lib/cli/open-door.ts'], {
    env: {
      ...process.env,
      ...env,
      DATA_DIR: path.resolve(dataDirectory),
      // No test opens a port to the network.
      HOST: '127.0.0.1',
      PORT: String(port),
      HILUM_INNER_PORT: String(innerPort),
    },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const gone = once(door, 'exit').then(() => {
    throw new Error('the TLS door did not open; the lines above say why');
  });
  gone.catch(() => undefined);
  await Promise.race([once(createInterface({ input: door.stdout }), 'line'), gone]);
  return door;
}

/**
 * What Chromium is started with to take the door's certificate for trusted, as a phone does whose owner has installed
 * the authority: it goes by the hash of exactly this certificate's key, all others are checked as ever.
 */
export function trustOf(dataDirectory: string): string {
  const { publicKey } = new X509Certificate(readFileSync(path.join(dataDirectory, 'tls', 'door.pem')));
  const hash = createHash('sha256')
    .update(publicKey.export({ type: 'spki', format: 'der' }))
    .digest('base64');
  return `--ignore-certificate-errors-spki-list=${hash}`;
}
