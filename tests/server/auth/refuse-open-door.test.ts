import { expect, it } from 'vitest';
import { refuseOpenDoor } from '@/lib/server/auth/refuse-open-door';

it.each([
  ['127.0.0.1', '127.0.0.1'],
  ['localhost', '::1'],
  ['0.0.0.0', '0.0.0.0'],
  ['192.0.2.1', undefined],
  ['seeds.example', '127.0.0.1'],
])('starts with HOST %s listening on %s', (host, listensOn) => {
  expect(() => refuseOpenDoor(host, listensOn)).not.toThrow();
});

it.each([
  ['127.0.0.1', undefined],
  ['127.0.0.1', ''],
  ['127.0.0.1', '0.0.0.0'],
  ['localhost', '192.0.2.1'],
  ['::1', 'a1b2c3d4e5f6'],
])('does not start without sign-in: HOST %s, listening on %s', (host, listensOn) => {
  expect(() => refuseOpenDoor(host, listensOn)).toThrow(/nobody signs in/);
});
