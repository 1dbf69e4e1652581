// /address: what works at the address that the browser came by, and what to do where not everything does.
import type { Reach } from '../reach.ts';
import { document, link, list, paragraph, qr, STYLE } from './html.ts';
import { ADDRESS_WORDS as words } from './words.ts';

export interface Small {
  readonly type: string;
  readonly body: string;
}

/** Browsers hold this machine's own addresses for secure without https. */
const isLocal = (host: string): boolean => /^(127\.0\.0\.1|localhost|\[::1\])(:\d+)?$/.test(host);

function addressPage({ secure, trustAddress }: Reach, host: string): string {
  const open = link('/', words.open);
  if (secure || isLocal(host)) return document(words.title, '/address.css', [paragraph(words.secure), open]);
  const mend = trustAddress
    ? [paragraph(words.mend), link(trustAddress), qr(trustAddress)]
    : [paragraph(words.mendByStart)];
  return document(words.title, '/address.css', [
    paragraph(words.insecure),
    list('ul', words.lost),
    paragraph(words.works),
    ...mend,
    open,
  ]);
}

/** The server's own pages, by address; undefined for every other. */
export function smallPage(path: string, reach: Reach, host: string): Small | undefined {
  if (path === '/address') return { type: 'text/html; charset=utf-8', body: addressPage(reach, host) };
  return path === '/address.css' ? { type: 'text/css; charset=utf-8', body: STYLE } : undefined;
}
