import { type IncomingMessage, type OutgoingHttpHeaders, request, type ServerResponse } from 'node:http';
import type { TLSSocket } from 'node:tls';

/** Headers about one connection, not about the message (RFC 9110, 7.6.1), and those that only our door may write. */
const NOT_PASSED_ON = new Set([
  'connection',
  'keep-alive',
  'proxy-connection',
  'proxy-authenticate',
  'proxy-authorization',
  'te',
  'trailer',
  'transfer-encoding',
  'upgrade',
  'expect',
  'forwarded',
  'x-real-ip',
]);
const AWAY = 'Hilum is starting again, or was stopped. Nothing was saved. Wait a moment, then try once more.';
const BROKE_OFF =
  'The connection broke off before Hilum had answered. Look whether it was saved before you try once more.';

/**
 * Passes one request on to the server on this computer and its answer back, both as they come: nothing is collected, so
 * large files take no memory. What the request says of where it comes from is replaced by what the door knows.
 *
 * A server that does not answer is said in plain words with 502. An answer that breaks off is broken off here too, so
 * that nobody takes half a file for a whole one; a request that breaks off is broken off there.
 *
 * @param port  of the server, on 127.0.0.1
 * Checked in tests/server/tls/tls-door.test.ts
 */
export function forwardRequest(asked: IncomingMessage, answer: ServerResponse, port: number): void {
  // A connection of its own for each: one that the server closes at the same moment would fail the request on it.
  const passedOn = request({
    host: '127.0.0.1',
    port,
    method: asked.method,
    path: asked.url,
    headers: headersFor(asked),
    setHost: false,
    agent: false,
  });
  passedOn.on('response', (answered) => {
    answer.writeHead(answered.statusCode ?? 502, answered.statusMessage, withoutConnection(answered));
    answered.on('error', () => answer.destroy());
    answered.on('aborted', () => answer.destroy());
    answered.pipe(answer);
  });
  passedOn.on('error', (error: NodeJS.ErrnoException) => {
    if (answer.headersSent) {
      answer.destroy();
      return;
    }
    answer.writeHead(502, {
      'Content-Type': 'text/plain; charset=utf-8',
      'Cache-Control': 'no-store',
      'Retry-After': '2',
    });
    answer.end(error.code === 'ECONNREFUSED' ? AWAY : BROKE_OFF);
  });
  answer.on('close', () => {
    if (!answer.writableFinished) passedOn.destroy();
  });
  asked.on('error', () => passedOn.destroy());
  asked.pipe(passedOn);
}

function headersFor(asked: IncomingMessage): OutgoingHttpHeaders {
  const secure = (asked.socket as TLSSocket).encrypted === true;
  return {
    ...withoutConnection(asked),
    'x-forwarded-for': addressOf(asked),
    'x-forwarded-proto': secure ? 'https' : 'http',
    'x-forwarded-host': asked.headers.host ?? '',
    connection: 'close',
    ...(asked.headers['transfer-encoding'] !== undefined && { 'transfer-encoding': 'chunked' }),
  };
}

function withoutConnection(message: IncomingMessage): OutgoingHttpHeaders {
  const named = (message.headers.connection ?? '').toLowerCase().split(',');
  const dropped = new Set(named.map((name) => name.trim()));
  return Object.fromEntries(
    Object.entries(message.headers).filter(
      ([name]) => !NOT_PASSED_ON.has(name) && !dropped.has(name) && !name.startsWith('x-forwarded-'),
    ),
  );
}

/** IPv4 addresses come in IPv6 clothes where the door listens on both. */
const addressOf = ({ socket }: IncomingMessage): string =>
  (socket.remoteAddress ?? '').replace(/^::ffff:(?=[\d.]+$)/, '');
