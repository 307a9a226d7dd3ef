import { once } from 'node:events';
import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { sendToHttps } from '@/lib/server/tls/send-to-https';
import { isLoopbackAddress } from '@/lib/server/tls/tls-door';

const server = createServer(sendToHttps);
beforeAll(async () => {
  server.listen(0, '127.0.0.1');
  await once(server, 'listening');
});
afterAll(() => server.close());

async function ask(method: string, path: string, host: string) {
  const { port } = server.address() as AddressInfo;
  const sent = request({ host: '127.0.0.1', port, method, path, headers: { Host: host } }).end();
  const [answer] = await once(sent, 'response');
  answer.resume();
  return {
    status: answer.statusCode,
    location: answer.headers.location,
    hsts: answer.headers['strict-transport-security'],
  };
}

it('sends whoever reads without TLS to the same place with it', async () => {
  expect(await ask('GET', '/l/L-0001?a=1', 'seedroom.local:4310')).toEqual({
    status: 307,
    location: 'https://seedroom.local:4310/l/L-0001?a=1',
    hsts: undefined,
  });
  expect((await ask('HEAD', '/', '[fd00::2]:4310')).location).toBe('https://[fd00::2]:4310/');
});

it('does not send on what was posted in the clear', async () => {
  expect(await ask('POST', '/sign-in', 'seedroom.local:4310')).toMatchObject({ status: 400, location: undefined });
});

it('sends nobody to a place that is made up', async () => {
  expect(await ask('GET', '/', 'a@b/c')).toMatchObject({ status: 400, location: undefined });
  expect((await ask('GET', 'http://attacker.example/', 'seedroom.local')).location).toBe('https://seedroom.local/');
});

it.each([
  ['127.0.0.1', true],
  ['127.9.9.9', true],
  ['::1', true],
  ['::ffff:127.0.0.1', true],
  ['192.168.1.20', false],
  ['::ffff:192.168.1.20', false],
  ['fe80::1', false],
  ['', false],
])('takes %s for this computer: %s', (address, isHere) => {
  expect(isLoopbackAddress(address)).toBe(isHere);
});
