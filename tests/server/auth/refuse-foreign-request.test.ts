import { describe, expect, it } from 'vitest';
import { refuseForeignRequest } from '@/lib/server/auth/refuse-foreign-request';

const loopback = { loopbackOnly: true };
const accounts = { loopbackOnly: false };
const status = (...call: Parameters<typeof refuseForeignRequest>) => refuseForeignRequest(...call)?.status ?? 'let in';

describe('refuseForeignRequest on loopback', () => {
  it.each(['127.0.0.1:4310', 'localhost:4310', 'LOCALHOST', '[::1]:4310', '127.0.0.1'])('lets in Host %s', (host) => {
    expect(status({ host, origin: null }, loopback)).toBe('let in');
  });

  it.each([
    'seeds.example:4310',
    '127.0.0.1.attacker.example',
    'localhost.attacker.example:4310',
    '192.168.1.20:4310',
    'attacker.example:127',
    '0.0.0.0:4310',
    '127.0.0.1:80:80',
    '127.0.0.1@attacker.example',
    '',
    null,
  ])('refuses Host %s with 421', (host) => {
    expect(status({ host, origin: null }, loopback)).toBe(421);
  });

  it('lets in its own pages', () => {
    expect(status({ host: '127.0.0.1:4310', origin: 'http://127.0.0.1:4310' }, loopback)).toBe('let in');
    expect(status({ host: '[::1]:4310', origin: 'http://[::1]:4310' }, loopback)).toBe('let in');
  });

  it.each([
    'https://attacker.example',
    'http://localhost:3000',
    'http://127.0.0.1',
    'null',
    'file://',
    'not an origin',
  ])('refuses a request from the page of %s with 403, even for reading', (origin) => {
    expect(status({ host: '127.0.0.1:4310', origin, method: 'GET' }, loopback)).toBe(403);
    expect(status({ host: '127.0.0.1:4310', origin, method: 'POST' }, loopback)).toBe(403);
  });

  it('follows a link from elsewhere but takes no post from there', () => {
    const facts = { host: 'localhost:4310', origin: null, fetchSite: 'cross-site' };
    expect(status({ ...facts, method: 'GET' }, loopback)).toBe('let in');
    expect(status({ ...facts, method: 'POST' }, loopback)).toBe(403);
    expect(status({ ...facts, fetchSite: 'same-site', method: 'POST' }, loopback)).toBe(403);
    expect(status({ ...facts, fetchSite: 'same-origin', method: 'POST' }, loopback)).toBe('let in');
  });
});

describe('refuseForeignRequest with accounts', () => {
  it('answers under any name', () => {
    expect(status({ host: '192.168.1.20:4310', origin: null }, accounts)).toBe('let in');
  });

  it('refuses another site’s page', () => {
    expect(status({ host: 'seeds.example', origin: 'https://attacker.example', method: 'POST' }, accounts)).toBe(403);
    expect(status({ host: 'seeds.example', origin: 'https://seeds.example', method: 'POST' }, accounts)).toBe('let in');
  });

  it('knows its public address when a proxy passes another Host', () => {
    const rules = { loopbackOnly: false, publicAddress: 'https://seeds.example/' };
    const facts = { host: '127.0.0.1:4310', method: 'POST' };
    expect(status({ ...facts, origin: 'https://seeds.example' }, rules)).toBe('let in');
    expect(status({ ...facts, origin: 'http://seeds.example' }, rules)).toBe(403);
  });
});
