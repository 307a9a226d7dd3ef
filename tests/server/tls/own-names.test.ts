import type { NetworkInterfaceInfo } from 'node:os';
import { describe, expect, it } from 'vitest';
import { ownNames } from '@/lib/server/tls/own-names';

const at = (address: string, internal = false) => ({ address, internal }) as NetworkInterfaceInfo;
const laptop = {
  host: '0.0.0.0',
  hostname: 'Seedroom',
  interfaces: {
    lo: [at('127.0.0.1', true), at('::1', true)],
    docker0: [at('172.17.0.1')],
    wlan0: [at('fe80::1'), at('fd00::7'), at('192.168.1.20'), at('2001:db8::7'), at('198.51.100.7')],
  },
};

describe('where every address listens', () => {
  it('offers private addresses, the likeliest first, and the name in the house’s network', () => {
    expect(ownNames(laptop)).toEqual({
      asked: [],
      found: ['192.168.1.20', 'fd00::7', '172.17.0.1', 'seedroom.local'],
    });
  });

  it('puts an address that the computer gave itself last', () => {
    const { found } = ownNames({ ...laptop, interfaces: { eth0: [at('169.254.3.4')], wlan0: [at('10.0.0.5')] } });
    expect(found.slice(0, 2)).toEqual(['10.0.0.5', '169.254.3.4']);
  });

  it('asks for the public address besides', () => {
    expect(ownNames({ ...laptop, publicAddress: 'https://seeds.example.org:8443' }).asked).toEqual([
      'seeds.example.org',
    ]);
    expect(ownNames({ ...laptop, publicAddress: 'https://[fd00::9]' }).asked).toEqual(['fd00::9']);
  });
});

it('offers the one address that HOST names, and no other', () => {
  expect(ownNames({ ...laptop, host: '192.168.1.20' })).toEqual({ asked: ['192.168.1.20'], found: [] });
});

it.each([
  ['seedroom.example.net', ['seedroom.local', 'seedroom.example.net']],
  ['Seedroom.local', ['seedroom.local']],
  ['garden', ['garden.local']],
  ["Ada's laptop", []],
  ['', []],
])('of the computer name %s it offers %s: no bare name, and none that is no host name', (hostname, names) => {
  expect(ownNames({ host: '::', hostname, interfaces: {} }).found).toEqual(names);
});
