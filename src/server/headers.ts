// What every answer forbids the page: other hosts, inline scripts, framing, sensors. The procedure a unit wrote must
// not leave its machine because a page asked for a font.
import { createHash } from 'node:crypto';

/**
 * The two style elements that the component library adds by itself (react-aria: how a pressable thing takes touches, and
 * no scrolling behind an open dialog on a tablet). Allowed by their exact text, so that no other inline style is;
 * test/server/headers.test.ts compares them with the library's own.
 */
const LIBRARY_STYLES: readonly string[] = [
  '@layer {\n  [data-react-aria-pressable] {\n    touch-action: pan-x pan-y pinch-zoom;\n  }\n}',
  '@layer {\n  * {\n    overscroll-behavior: contain;\n  }\n}',
];

const hashOf = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

const POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  `style-src 'self' ${LIBRARY_STYLES.map(hashOf).join(' ')}`,
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "media-src 'self' blob:",
  "connect-src 'self'",
  "worker-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

export const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy': POLICY,
  'Cross-Origin-Embedder-Policy': 'require-corp',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy':
    'camera=(), microphone=(), geolocation=(), payment=(), usb=(), serial=(), screen-wake-lock=(self)',
  'Referrer-Policy': 'no-referrer',
  'X-Content-Type-Options': 'nosniff',
  'X-Frame-Options': 'DENY',
};
