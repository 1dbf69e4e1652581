// The page at the address without https from which tablets fetch the authority's certificate, and nothing else: a server
// of its own, on a port of its own. Names of hosts are not checked here, because there is nothing to take.
import { X509Certificate } from 'node:crypto';
import { createServer, type Server } from 'node:http';
import { SECURITY_HEADERS } from '../headers.ts';
import { fingerprintOf } from '../tls/certificates.ts';
import { document, escaped, link, list, paragraph, qr, STYLE } from './html.ts';
import { TRUST_WORDS as words } from './words.ts';

export interface Trust {
  /** The authority's certificate in PEM. */
  readonly authority: string;
  /** Where this page is. */
  readonly here: () => string;
  /** The secure address. */
  readonly secure: () => string;
}

const CERTIFICATE = '/doffline-authority.crt';

function trustPage({ authority, here, secure }: Trust): string {
  return document(words.title, '/trust.css', [
    paragraph(words.why),
    paragraph(words.compare),
    `<p><code>${escaped(fingerprintOf(authority))}</code></p>`,
    paragraph(words.scan),
    qr(here()),
    link(CERTIFICATE, words.fetch),
    paragraph(words.steps),
    ...words.platforms.flatMap(({ name, steps }) => [`<h2>${escaped(name)}</h2>`, list('ol', steps)]),
    paragraph(words.last),
    link(secure()),
    paragraph(words.bounds),
  ]);
}

/** A server of that page, not yet listening. */
export function trustServer(trust: Trust): Server {
  const der = new X509Certificate(trust.authority).raw;
  const answers: Readonly<Record<string, () => readonly [string, string | Buffer]>> = {
    '/': () => ['text/html; charset=utf-8', trustPage(trust)],
    '/trust.css': () => ['text/css; charset=utf-8', STYLE],
    [CERTIFICATE]: () => ['application/x-x509-ca-cert', der],
  };
  return createServer(
    { headersTimeout: 5000, requestTimeout: 5000, maxHeaderSize: 8192 },
    (request, response) => {
      const path = (request.url ?? '').split('?', 1)[0] ?? '';
      const answer = Object.hasOwn(answers, path) ? answers[path] : undefined;
      const allowed = request.method === 'GET' || request.method === 'HEAD';
      const headers = { ...SECURITY_HEADERS, 'Cache-Control': 'no-store', Connection: 'close' };
      if (!answer || !allowed) {
        response.writeHead(answer ? 405 : 404, { ...headers, 'Content-Type': 'text/plain' });
        return response.end(answer ? 'Only GET and HEAD\n' : 'Not found\n');
      }
      const [type, body] = answer();
      response.writeHead(200, {
        ...headers,
        'Content-Type': type,
        'Content-Length': Buffer.byteLength(body),
      });
      return response.end(request.method === 'HEAD' ? undefined : body);
    },
  );
}
