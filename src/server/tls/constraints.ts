// What an authority may vouch for: the unit's own names and private addresses, and nothing else in the world (RFC 5280,
// 4.2.1.10). Tablets that trust it then do not trust whoever steals its key with another site. Written in DER by hand: the
// library knows the extension only as bytes.
import { BlockList, isIP } from 'node:net';

export const NAME_CONSTRAINTS = '2.5.29.30';

/** Private, link-local and loopback blocks (RFC 1918, 3927, 4193, 4291): where a unit's server stands. */
const PRIVATE = [
  ['10.0.0.0', 8, 'ipv4'],
  ['172.16.0.0', 12, 'ipv4'],
  ['192.168.0.0', 16, 'ipv4'],
  ['169.254.0.0', 16, 'ipv4'],
  ['127.0.0.0', 8, 'ipv4'],
  ['fc00::', 7, 'ipv6'],
  ['fe80::', 10, 'ipv6'],
  ['::1', 128, 'ipv6'],
] as const;

const DNS_NAME = 0x82;
const IP_ADDRESS = 0x87;
const PERMITTED = 0xa0;
const SEQUENCE = 0x30;

function lengthOf(length: number): readonly number[] {
  if (length < 0x80) return [length];
  return length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
}

const tagged = (tag: number, content: Uint8Array): Buffer =>
  Buffer.concat([Buffer.from([tag, ...lengthOf(content.length)]), content]);

const maskOf = (bytes: number, prefix: number): readonly number[] =>
  Array.from({ length: bytes }, (_, index) => {
    const bits = Math.min(8, Math.max(0, prefix - index * 8));
    return (0xff << (8 - bits)) & 0xff;
  });

const groupBytes = (group: string): readonly number[] => {
  const value = Number.parseInt(group, 16);
  return [value >> 8, value & 0xff];
};

/** An address as bytes. Of IPv6 only what stands in the table above is written here: a start, two colons, an end. */
function bytesOf(address: string): readonly number[] {
  if (isIP(address) === 4) return address.split('.').map(Number);
  const [first, last] = address.split('::').map((half) =>
    half
      .split(':')
      .filter((group) => group !== '')
      .flatMap(groupBytes),
  );
  const between = 16 - first!.length - last!.length;
  return [...first!, ...Array<number>(between).fill(0), ...last!];
}

const dnsSubtree = (name: string): Buffer =>
  tagged(SEQUENCE, tagged(DNS_NAME, Buffer.from(name.toLowerCase(), 'ascii')));

function ipSubtree(address: string, prefix: number): Buffer {
  const bytes = bytesOf(address);
  return tagged(SEQUENCE, tagged(IP_ADDRESS, Buffer.from([...bytes, ...maskOf(bytes.length, prefix)])));
}

/** A name, or a public IPv4 address alone. IPv6 addresses of a machine come and go: only private ones are vouched for. */
function subtreeOf(name: string): Buffer | undefined {
  const family = isIP(name);
  if (family === 6) return undefined;
  return family === 4 ? ipSubtree(name, 32) : dnsSubtree(name);
}

function isPrivate(address: string): boolean {
  const list = new BlockList();
  for (const [block, prefix, family] of PRIVATE) list.addSubnet(block, prefix, family);
  return list.check(address, isIP(address) === 6 ? 'ipv6' : 'ipv4');
}

/** The extension's value: permitted are these names, with what stands below them, and private addresses. */
export function constraintsFor(names: readonly string[]): Buffer {
  const own = names.flatMap((name) => subtreeOf(name) ?? []);
  const blocks = PRIVATE.map(([address, prefix]) => ipSubtree(address, prefix));
  return tagged(SEQUENCE, tagged(PERMITTED, Buffer.concat([...own, ...blocks])));
}

/** Whether an authority, in DER, may vouch for a name or address: one that it was made for, or a private address. */
export function permits(authority: Buffer, name: string): boolean {
  if (isIP(name) !== 0 && isPrivate(name)) return true;
  const subtree = subtreeOf(name);
  return subtree !== undefined && authority.includes(subtree);
}
