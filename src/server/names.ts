// What this machine is called: by its own name, and by the addresses of its network cards. Used where the start does not
// name it otherwise.
import { hostname, networkInterfaces } from 'node:os';
import { isIP } from 'node:net';
import { LOOPBACK_NAMES } from './reach.ts';

/** A host name as certificates and browsers take it: letters, digits, hyphens and dots. */
const HOST_NAME = /^(?=.{1,253}$)[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?(\.[a-z0-9]([a-z0-9-]{0,61}[a-z0-9])?)*$/;

export const isName = (text: string): boolean => isIP(text) !== 0 || HOST_NAME.test(text.toLowerCase());

/** Without brackets, as certificates want them. */
export const LOOPBACK: readonly string[] = LOOPBACK_NAMES.map((name) => name.replaceAll(/[[\]]/g, ''));

/** Link-local addresses of IPv6 need a zone, which no address in a browser has. */
function cardAddresses(): readonly string[] {
  return Object.values(networkInterfaces())
    .flatMap((card) => card ?? [])
    .filter(({ internal, address }) => !internal && !address.startsWith('fe80'))
    .map(({ address }) => address);
}

/** Names and addresses by which others on the network may call this machine; addresses first. */
export function foundNames(): readonly string[] {
  const own = hostname().toLowerCase();
  const named = HOST_NAME.test(own) ? [own, ...(own.includes('.') ? [] : [`${own}.local`])] : [];
  const addresses = [...cardAddresses()].sort((a, b) => isIP(a) - isIP(b));
  return [...addresses, ...named];
}

/** As it stands in an address: IPv6 in brackets. */
export const inAddress = (name: string): string => (isIP(name) === 6 ? `[${name}]` : name.toLowerCase());
