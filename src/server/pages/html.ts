// A page of the server's own as text: without script, its style in a file beside it, everything put into it escaped.
import { renderSVG } from 'uqr';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

export const escaped = (text: string): string => text.replaceAll(/[&<>"']/g, (one) => ENTITIES[one] ?? one);

export const paragraph = (text: string): string => `<p>${escaped(text)}</p>`;

export const list = (tag: 'ul' | 'ol', lines: readonly string[]): string =>
  `<${tag}>${lines.map((line) => `<li>${escaped(line)}</li>`).join('')}</${tag}>`;

export const link = (address: string, text = address): string =>
  `<p><a href="${escaped(address)}">${escaped(text)}</a></p>`;

/** An address as a QR code, with the address in words for who cannot see or scan it. */
export const qr = (address: string): string =>
  `<figure>${renderSVG(address, { border: 2 }).replace('<svg ', '<svg role="img" aria-label="QR code" ')}<figcaption>${escaped(address)}</figcaption></figure>`;

export const STYLE = `body { font: 1.1rem/1.5 system-ui, sans-serif; max-width: 42rem; margin: 0 auto; padding: 1rem; color: #111; background: #fff; }
h1 { font-size: 1.6rem; }
code { font-size: 1rem; overflow-wrap: anywhere; }
figure { margin: 1rem 0; }
svg { width: 16rem; max-width: 100%; height: auto; }
a { display: inline-block; padding: 0.6rem 0; color: #0645ad; }
`;

export const document = (title: string, style: string, parts: readonly string[]): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<link rel="stylesheet" href="${style}">
</head>
<body>
<main>
<h1>${escaped(title)}</h1>
${parts.join('\n')}
</main>
</body>
</html>
`;
