// How the server is reached: by which names, over https or not, straight or through a hospital's proxy. A request that
// calls it otherwise is refused: a foreign page can give its own host any address (DNS rebinding), and a forwarded address
// is believed from the named proxies alone.
import type { IncomingMessage } from 'node:http';
import { BlockList, isIP, isIPv6 } from 'node:net';
import type { ProblemCode } from '../api/problems.ts';

export interface Reach {
  /** Whether the browser's connection is https: cookies say so, and pages can do all they do. */
  readonly secure: boolean;
  /** Host names and addresses that are its own, in small letters, IPv6 in brackets. */
  readonly names: ReadonlySet<string>;
  /** Addresses of the proxies; undefined where there is none. */
  readonly proxies: BlockList | undefined;
  /** Where tablets go: `https://isolation.example:4173`. */
  readonly address: string;
  /** Where tablets learn to trust it; undefined where there is nothing to learn. */
  readonly trustAddress: string | undefined;
  /** Whether browsers may be told to come by https for good: not where a certificate of our own may go. */
  readonly lasting: boolean;
}

export interface Arrival {
  /** Whose request it is, by address. */
  readonly peer: string;
  /** As the browser called the server, with the port. */
  readonly host: string;
}

export const LOOPBACK_NAMES = ['127.0.0.1', 'localhost', '[::1]'] as const;

/** `::ffff:10.0.0.1` is 10.0.0.1. */
const plain = (address: string): string => address.replace(/^::ffff:(?=\d+\.)/, '');

/** A list of addresses and blocks (`10.1.2.3`, `10.1.0.0/16`). Throws on anything else. */
export function blockList(texts: readonly string[]): BlockList {
  const list = new BlockList();
  for (const text of texts) {
    const [address = '', bits = ''] = text.split('/');
    const most = isIP(address) === 6 ? 128 : 32;
    const wanted = bits === '' ? most : Number(bits);
    if (isIP(address) === 0 || !(Number.isInteger(wanted) && wanted >= 0 && wanted <= most))
      throw new Error(`${JSON.stringify(text)} is no address and no block of addresses (10.1.0.0/16)`);
    list.addSubnet(address, wanted, most === 128 ? 'ipv6' : 'ipv4');
  }
  return list;
}

const isIn = (list: BlockList, address: string): boolean =>
  list.check(address, isIPv6(address) ? 'ipv6' : 'ipv4');

/** The last address in the list that is no proxy of ours: what stands before it anybody may have written. */
function forwardedPeer(header: string | undefined, proxies: BlockList, nearest: string): string {
  const chain = (header ?? '').split(',').map((one) => plain(one.trim()));
  const foreign = chain.reverse().find((one) => /^[0-9a-fA-F.:]{2,45}$/.test(one) && !isIn(proxies, one));
  return foreign ?? nearest;
}

const headerOf = (request: IncomingMessage, name: string): string | undefined => {
  const value = request.headers[name];
  return Array.isArray(value) ? value.join(',') : value;
};

/** Where a request comes from and by what name; or why it is not taken. */
export function arrivalOf(request: IncomingMessage, reach: Reach): Arrival | ProblemCode {
  const nearest = plain(request.socket.remoteAddress ?? '');
  const { proxies, names } = reach;
  if (proxies && !isIn(proxies, nearest)) return 'not-through-proxy';
  const forwarded = proxies ? headerOf(request, 'x-forwarded-host') : undefined;
  const host = (forwarded ?? request.headers.host ?? '').toLowerCase();
  if (!names.has(host.replace(/:\d{1,5}$/, ''))) return 'wrong-host';
  const peer = proxies ? forwardedPeer(headerOf(request, 'x-forwarded-for'), proxies, nearest) : nearest;
  return { peer, host };
}

/** Whether a page may have sent this request: its own origin, or no page at all. */
export function isOwnPage(
  request: IncomingMessage,
  { host }: Pick<Arrival, 'host'>,
  { secure }: Pick<Reach, 'secure'>,
): boolean {
  const { origin } = request.headers;
  const site = request.headers['sec-fetch-site'];
  if (site !== undefined && site !== 'same-origin' && site !== 'none') return false;
  return origin === undefined || origin.toLowerCase() === `${secure ? 'https' : 'http'}://${host}`;
}
