import { afterEach, describe, expect, it, vi } from 'vitest';
import { personOf } from '@/lib/server/auth/current-person';
import { SINGLE_STEWARD } from '@/lib/server/auth/single-steward';
import { createAccount, headersOf } from '@/tests/support/accounts';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();
afterEach(() => {
  vi.unstubAllEnvs();
});

describe('on loopback', () => {
  it('is the single steward', async () => {
    vi.stubEnv('HOST', '127.0.0.1');
    expect(await personOf(new Headers({ host: '127.0.0.1:4310' }))).toBe(SINGLE_STEWARD);
    vi.stubEnv('HOST', '');
    expect(await personOf(new Headers({ host: 'localhost:4310', origin: 'http://localhost:4310' }))).toBe(
      SINGLE_STEWARD,
    );
  });

  it('is nobody under a foreign name or from a foreign page', async () => {
    vi.stubEnv('HOST', '127.0.0.1');
    expect(await personOf(new Headers({ host: 'attacker.example' }))).toBeNull();
    expect(await personOf(new Headers())).toBeNull();
    expect(await personOf(new Headers({ host: '127.0.0.1:4310', origin: 'https://attacker.example' }))).toBeNull();
  });
});

describe('behind a proxy that lets others in', () => {
  it('is nobody without a session, though the app itself listens on loopback alone', async () => {
    vi.stubEnv('HOST', '127.0.0.1');
    vi.stubEnv('HILUM_ADDRESS', 'https://seeds.example.org');
    expect(await personOf(new Headers({ host: 'seeds.example.org' }))).toBeNull();
    expect(await personOf(new Headers({ host: '127.0.0.1:4310' }))).toBeNull();
  });
});

describe('on any other address', () => {
  it('is nobody without a session, also from this computer', async () => {
    vi.stubEnv('HOST', '0.0.0.0');
    expect(await personOf(new Headers({ host: '127.0.0.1:4310' }))).toBeNull();
  });

  it('is whose session it is, but not from a foreign page', async () => {
    vi.stubEnv('HOST', '192.0.2.1');
    const ada = await createAccount({ role: 'volunteer', signInName: 'ada' });
    const headers = await headersOf('ada');
    expect(await personOf(headers)).toEqual({ id: ada.id, name: ada.name, role: 'volunteer' });
    headers.set('origin', 'https://attacker.example');
    expect(await personOf(headers)).toBeNull();
  });
});
