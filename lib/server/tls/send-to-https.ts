import type { IncomingMessage, ServerResponse } from 'node:http';

/**
 * The answer to whoever comes without TLS from another device: where to go, and nothing of the bank. Only what reads is
 * sent on; a form that was posted in the clear must not be sent twice.
 *
 * Checked in tests/server/tls/send-to-https.test.ts
 */
export function sendToHttps({ headers, url, method }: IncomingMessage, answer: ServerResponse): void {
  const host = /^[\w.:[\]-]+$/.exec(headers.host ?? '')?.[0];
  const mayFollow = host !== undefined && (method === 'GET' || method === 'HEAD');
  answer.writeHead(mayFollow ? 307 : 400, {
    'Content-Type': 'text/plain; charset=utf-8',
    'Cache-Control': 'no-store',
    Connection: 'close',
    ...(mayFollow && { Location: `https://${host}${url?.startsWith('/') ? url : '/'}` }),
  });
  answer.end(`Hilum answers only https here. Open https://${host ?? 'and the same address'}\n`);
}
