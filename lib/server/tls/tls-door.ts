import { once } from 'node:events';
import { createServer as createHttpServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { createServer as createHttpsServer } from 'node:https';
import { type AddressInfo, createServer, type Server, type Socket } from 'node:net';
import { forwardRequest } from './forward-request';
import { sendToHttps } from './send-to-https';

export interface DoorQuestion {
  /** HOST: where it listens, besides on this computer itself */
  host: string;
  /** 0: a free one */
  port: number;
  /** PEM: the certificate and what leads to its authority; the key */
  certificate: string;
  key: string;
  /** port of the plain server on 127.0.0.1 */
  innerPort: number;
}

export interface Door {
  port: number;
  /** From now on new connections are shown this certificate; those that are open stay. */
  showCertificate(certificate: string, key: string): void;
  close(): Promise<void>;
}

const EVERY_ADDRESS = new Set(['0.0.0.0', '::']);
/** First byte of a TLS connection: a handshake record (RFC 8446, 5.1). No HTTP method begins with it. */
const HANDSHAKE = 22;
const SAYS_NOTHING_MS = 10_000;
const STANDS_STILL_MS = 120_000;
const KEEPS_OPEN_MS = 65_000;
const MOST_CONNECTIONS = 1000;

/**
 * One port for all: TLS for other devices; plain http for this computer alone, which needs no certificate. Whoever else
 * comes without TLS is sent to the https address and gets nothing besides.
 *
 * @throws Error of the system when the port is taken or the certificate is none
 * Checked in tests/server/tls/tls-door.test.ts
 */
export async function openTlsDoor({ host, port, certificate, key, innerPort }: DoorQuestion): Promise<Door> {
  const forward = (asked: IncomingMessage, answer: ServerResponse) => forwardRequest(asked, answer, innerPort);
  const secure = createHttpsServer(
    { cert: certificate, key, minVersion: 'TLSv1.2', handshakeTimeout: SAYS_NOTHING_MS },
    forward,
  );
  const plain = createHttpServer((asked, answer) =>
    isLoopbackAddress(asked.socket.remoteAddress ?? '') ? forward(asked, answer) : sendToHttps(asked, answer),
  );
  for (const server of [secure, plain]) {
    server.timeout = STANDS_STILL_MS;
    server.keepAliveTimeout = KEEPS_OPEN_MS;
  }
  // A handshake that fails is the other side's business: a phone that does not trust the certificate yet.
  secure.on('tlsClientError', (_error, socket) => socket.destroy());
  const open = new Set<Socket>();
  const fronts: Server[] = [];
  const listen = async (on: string, at: number) => {
    const front = createServer({ allowHalfOpen: true, noDelay: true, keepAlive: true }, (socket) => {
      open.add(socket);
      socket.on('close', () => open.delete(socket));
      receive(socket, (first) => {
        // HTTP may be asked with an end and answered after it; a TLS connection that ends is over.
        socket.allowHalfOpen = first !== HANDSHAKE;
        (first === HANDSHAKE ? secure : plain).emit('connection', socket);
      });
    });
    front.maxConnections = MOST_CONNECTIONS;
    front.listen(at, on);
    await once(front, 'listening');
    fronts.push(front);
    return (front.address() as AddressInfo).port;
  };
  const close = async () => {
    const closed = fronts.map((front) => once(front, 'close'));
    for (const front of fronts) front.close();
    for (const socket of open) socket.destroy();
    await Promise.all(closed);
  };
  const boundTo = await listen(host, port);
  if (!EVERY_ADDRESS.has(host) && !isLoopbackAddress(host)) {
    await listen('127.0.0.1', boundTo).catch(async (error) => {
      await close();
      throw error;
    });
  }
  return {
    port: boundTo,
    showCertificate: (cert, newKey) => secure.setSecureContext({ cert, key: newKey, minVersion: 'TLSv1.2' }),
    close,
  };
}

/** Looks at the first byte and puts it back. */
function receive(socket: Socket, give: (first: number) => void): void {
  const drop = () => socket.destroy();
  socket.on('error', drop);
  socket.setTimeout(SAYS_NOTHING_MS, drop);
  socket.once('readable', () => {
    const first: Buffer | null = socket.read(1);
    if (first === null) {
      drop(); // closed without a word
      return;
    }
    socket.setTimeout(0);
    socket.off('timeout', drop);
    socket.unshift(first);
    give(first[0] ?? 0);
  });
}

/** Of a connection that cannot have come from another device. */
export const isLoopbackAddress = (address: string) => /^(::ffff:)?127\.|^::1$|^localhost$/.test(address);
