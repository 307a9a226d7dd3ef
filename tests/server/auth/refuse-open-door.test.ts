import { expect, it } from 'vitest';
import { refuseOpenDoor } from '@/lib/server/auth/refuse-open-door';

it.each(['127.0.0.1', 'localhost', '::1'])('starts where the plain server listens on %s', (listensOn) => {
  expect(() => refuseOpenDoor(listensOn)).not.toThrow();
});

it.each([undefined, '', '0.0.0.0', '::', '192.0.2.1', 'a1b2c3d4e5f6'])(
  'does not start where others could connect without TLS: listening on %s',
  (listensOn) => {
    expect(() => refuseOpenDoor(listensOn)).toThrow(/without TLS/);
  },
);
