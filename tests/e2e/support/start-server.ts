import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import path from 'node:path';
import { startDoor } from './start-door';

export interface ServerOptions {
  /** a data folder that is prepared: migrated, with its reference facts */
  dataDirectory: string;
  /** what HOST says; anything but loopback asks for accounts */
  host?: string;
  /** 0 or left out: a free one */
  port?: number;
  /** Puts the TLS door before it, as HOST does outside of tests: accounts are asked for, the address is https. */
  tls?: boolean;
  /** what is started; left out, this build */
  program?: string;
  env?: Record<string, string>;
}

export interface RunningServer {
  /** how this computer reaches it: 'http://127.0.0.1:43211', with `tls` 'https://127.0.0.1:43211' */
  address: string;
  port: number;
  /** everything it has printed so far */
  output(): string;
  /** Ends exactly this process and waits until it is gone. */
  stop(): Promise<void>;
  /** Takes its power away: it gets to finish nothing. */
  kill(): Promise<void>;
}

const PATIENCE_MS = 60_000;
const BETWEEN_QUESTIONS_MS = 100;

/** Starts the built app as `npm run up` does and waits until it answers. */
export async function startServer({
  dataDirectory,
  tls = false,
  program = path.resolve('.next/standalone/server.js'),
  host = tls ? '0.0.0.0' : '127.0.0.1',
  port = 0,
  env = {},
}: ServerOptions): Promise<RunningServer> {
  const listenOn = port === 0 ? await freePort() : port;
  const innerPort = tls ? await freePort() : listenOn;
  const door = tls ? await startDoor({ dataDirectory, port: listenOn, innerPort, env }) : null;
  // The door lets this computer in without TLS too, so that asking whether it is alive needs no certificate.
  const address = `http://127.0.0.1:${listenOn}`;
  const child = spawn(process.execPath, [program], {
    env: {
      ...process.env,
      NODE_ENV: 'production',
      NEXT_TELEMETRY_DISABLED: '1',
      DATA_DIR: path.resolve(dataDirectory),
      HOST: host,
      // Whichever door is tried, no test opens a port to the network.
      HOSTNAME: '127.0.0.1',
      PORT: String(innerPort),
      HILUM_TLS_PORT: tls ? String(listenOn) : '',
      ...env,
    },
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let output = '';
  const note = (chunk: Buffer) => {
    output += chunk.toString();
  };
  child.stdout.on('data', note);
  child.stderr.on('data', note);
  const programs = [child, ...(door ? [door] : [])];
  const gone = Promise.all(programs.map((program) => isGone(program) || once(program, 'exit')));
  const end = async (signal: NodeJS.Signals) => {
    for (const program of programs) if (!isGone(program)) program.kill(signal);
    await gone;
  };
  const stop = () => end('SIGTERM');
  const kill = () => end('SIGKILL');
  const ready = { address: tls ? address.replace('http', 'https') : address, port: listenOn };
  const until = Date.now() + PATIENCE_MS;
  while (Date.now() < until && child.exitCode === null) {
    if (await isAlive(address)) return { ...ready, output: () => output, stop, kill };
    await new Promise((resolve) => setTimeout(resolve, BETWEEN_QUESTIONS_MS));
  }
  await stop();
  throw new Error(`the server did not start:\n${output}`);
}

const isGone = ({ exitCode, signalCode }: ChildProcess) => exitCode !== null || signalCode !== null;

async function isAlive(address: string): Promise<boolean> {
  try {
    return (await fetch(`${address}/api/health`, { signal: AbortSignal.timeout(2_000) })).ok;
  } catch {
    return false;
  }
}

async function freePort(): Promise<number> {
  const server = createServer();
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
  const address = server.address();
  server.close();
  await once(server, 'close');
  if (address === null || typeof address === 'string') throw new Error('freePort: no port was given');
  return address.port;
}
