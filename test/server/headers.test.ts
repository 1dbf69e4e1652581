// The content security policy lets in exactly the inline styles that the component library adds, and no other. When
// the library's next version words them otherwise, this says so before a tablet does.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { SECURITY_HEADERS } from '../../src/server/headers.ts';

const modules = dirname(dirname(fileURLToPath(import.meta.resolve('react-aria-components/package.json'))));
const policy = SECURITY_HEADERS['Content-Security-Policy'] ?? '';

/** The text of the style element that one file of the library makes. */
function styleIn(file: string): string {
  const source = readFileSync(join(modules, 'react-aria/dist/private', file), 'utf8');
  const template = /style\.textContent = `([^`]*)`\.trim\(\)/.exec(source)?.[1] ?? '';
  return template.replaceAll(/\$\{[^}]*PRESSABLE_ATTRIBUTE\}/g, 'data-react-aria-pressable').trim();
}

test.each(['interactions/usePress.js', 'overlays/usePreventScroll.js'])('%s may add its style', (file) => {
  const style = styleIn(file);
  expect(style).toContain('@layer');
  expect(policy).toContain(`'sha256-${createHash('sha256').update(style).digest('base64')}'`);
});

test('nothing else inline is let in', () => {
  expect(policy.match(/'sha256-/g)).toHaveLength(2);
  expect(policy).not.toContain('unsafe-inline');
  expect(policy).not.toContain('unsafe-eval');
});
