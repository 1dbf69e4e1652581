// The last act of a new user's story: every paper typeset and saved, and the page as it stands, read back word by word with
// poppler's tools where they are installed.
import { spawnSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { expect, type Page } from '@playwright/test';
import { DOCUMENT_KINDS, type DocumentKind, printWordsFor } from '../../src/words/print/index.ts';
import type { Hand } from './hands.ts';

const NAMES = printWordsFor('en').document;
/** These have every sentence whole, the others only what is done, without how. */
const WHOLE: readonly DocumentKind[] = ['chart', 'script', 'dossier'];

const whatIsDone = (sentence: string): string => /^[^:.]+/.exec(sentence)?.[0] ?? sentence;

const bare = (text: string): string => text.replaceAll(/[\s\u00a0\u202f-]+/g, '').toLowerCase();

/** Without blanks, hyphens and capitals; undefined where the tools are not installed. */
function textOf(pdf: Buffer): string | undefined {
  const { status, stdout } = spawnSync('pdftotext', ['-raw', '-', '-'], { input: pdf, encoding: 'utf8' });
  return status === 0 ? bare(stdout) : undefined;
}

function holds(text: string | undefined, all: readonly string[], paper: string): void {
  if (text === undefined) return;
  const missing = all.filter((one) => !text.includes(bare(one)));
  expect(missing, paper).toEqual([]);
}

async function typeset(page: Page, hand: Hand, kind: DocumentKind): Promise<Buffer> {
  await hand.pick(page.getByRole('radiogroup', { name: 'Which paper' }), NAMES[kind]);
  const download = page.waitForEvent('download', { timeout: 60_000 });
  await hand.press(page.getByRole('button', { name: 'Typeset paper (PDF)' }));
  const saved = await download;
  await expect(page.getByText(`Saved as ${saved.suggestedFilename()}.`)).toBeVisible();
  return readFile(await saved.path());
}

export async function print(page: Page, hand: Hand): Promise<void> {
  const steps = await page
    .locator('.version-steps li')
    .evaluateAll((all) => all.map((one) => one.lastChild?.textContent ?? ''));
  expect(steps.length).toBeGreaterThan(12);
  const title = (await page.getByRole('heading', { level: 1 }).textContent()) ?? '';
  await hand.press(page.locator('.print-panel > summary'));
  await expect(page.getByRole('button', { name: 'Typeset paper (PDF)' })).toBeEnabled();
  for (const kind of DOCUMENT_KINDS) {
    const text = textOf(await typeset(page, hand, kind));
    holds(text, WHOLE.includes(kind) ? steps : steps.map(whatIsDone), NAMES[kind]);
    holds(text, [title, 'version 1', 'approved on'], NAMES[kind]);
  }
  holds(textOf(await page.pdf({ format: 'A4' })), [title, ...steps], 'the page as it stands');
}
