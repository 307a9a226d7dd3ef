import { isIP } from 'node:net';
import type { NetworkInterfaceInfo } from 'node:os';
import { isPrivateAddress } from './private-networks';

/** By what names and addresses other devices may reach this computer. */
export interface OwnNames {
  /** What the steward asked for by name: the host of HILUM_ADDRESS, HOST itself. A certificate without them is worth a word. */
  asked: string[];
  /** What this computer has anyway: its private addresses, the likeliest first, and its name. */
  found: string[];
}

export interface Surroundings {
  /** HOST: '0.0.0.0' and '::' mean every address */
  host: string;
  /** HILUM_ADDRESS */
  publicAddress?: string;
  /** os.hostname() */
  hostname: string;
  /** os.networkInterfaces() */
  interfaces: NodeJS.Dict<NetworkInterfaceInfo[]>;
}

const EVERY_ADDRESS = new Set(['0.0.0.0', '::']);
/** Networks between programs of this computer, and tunnels: no phone in the house is there. */
const WITHIN_THE_COMPUTER =
  /^(docker|br-|veth|virbr|vboxnet|vmnet|vnet|lxc|lxd|podman|cni|flannel|utun|tun|tap|zt|wg)/i;
const HOST_NAME = /^(?=.{1,253}$)[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?(\.[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?)*$/;

/** Checked in tests/server/tls/own-names.test.ts */
export function ownNames({ host, publicAddress, hostname, interfaces }: Surroundings): OwnNames {
  const listensOnOne = !EVERY_ADDRESS.has(host);
  const asked = [
    ...(publicAddress === undefined ? [] : [new URL(publicAddress).hostname.replace(/^\[|\]$/g, '')]),
    ...(listensOnOne ? [host.toLowerCase()] : []),
  ];
  const found = listensOnOne ? [] : [...addressesOf(interfaces), ...namesOf(hostname)];
  return { asked: unique(asked), found: unique(found).filter((name) => !asked.includes(name)) };
}

/**
 * Private addresses only: a phone in the house does not need others, and one of this computer's public IPv6 addresses is
 * a new one every day. Link-local IPv6 addresses cannot be typed into a browser.
 */
function addressesOf(interfaces: Surroundings['interfaces']): string[] {
  return Object.entries(interfaces)
    .flatMap(([called, entries]) => (entries ?? []).map((entry) => ({ ...entry, called })))
    .filter(({ internal, address }) => !internal && isPrivateAddress(address) && !/^fe[89ab]/i.test(address))
    .sort((one, other) => rank(one) - rank(other))
    .map(({ address }) => address);
}

const rank = ({ called, address }: { called: string; address: string }) =>
  (WITHIN_THE_COMPUTER.test(called) ? 4 : 0) + (address.startsWith('169.254.') ? 2 : 0) + (isIP(address) === 6 ? 1 : 0);

/**
 * The name as the house's network knows it, 'seedroom.local', and the full name if the computer has one. A bare name is
 * left out: an authority bound to 'garden' could speak for every site that ends in '.garden'.
 */
function namesOf(hostname: string): string[] {
  const name = hostname.toLowerCase().replace(/\.$/, '');
  const short = name.split('.')[0] ?? '';
  return [`${short}.local`, name].filter((each) => each.includes('.') && HOST_NAME.test(each) && isIP(each) === 0);
}

const unique = (names: string[]) => [...new Set(names)];
