// `print` never costs anybody a file: what is there stands unless asked for, and only a plain file is ever written over.
import { lstatSync, mkdirSync, readdirSync, readFileSync, symlinkSync } from 'node:fs';
import { dirname } from 'node:path';
import { expect, test } from 'vitest';
import { gloves, run, withFiles } from './run.ts';

const FILES = { 'gloves.yaml': gloves(), 'there.pdf': 'mine' };

const isPdf = (file: string): boolean => readFileSync(file, 'latin1').startsWith('%PDF-');

test('what is there stands unless --force, the procedure itself too', async () => {
  await withFiles(FILES, async (path) => {
    const to = (out: string) => ['print', path('gloves.yaml'), '--as', 'card', '--out', path(out)];
    for (const out of ['there.pdf', 'gloves.yaml']) {
      const { status, err } = await run(to(out));
      expect([status, err]).toEqual([2, expect.stringContaining('is there already; --force overwrites it.')]);
      expect(isPdf(path(out))).toBe(false);
    }
    expect((await run([...to('there.pdf'), '--force'])).status).toBe(0);
    expect(isPdf(path('there.pdf'))).toBe(true);
  });
});

test('a folder, a link and a place that is not there are refused in plain words, and nothing is left lying about', async () => {
  await withFiles(FILES, async (path) => {
    mkdirSync(path('folder'));
    symlinkSync(path('there.pdf'), path('link.pdf'));
    for (const [out, says] of [
      ['folder', 'is no plain file'],
      ['link.pdf', 'is no plain file'],
      ['nowhere/card.pdf', 'cannot be written'],
    ] as const) {
      const { status, err } = await run([
        'print',
        path('gloves.yaml'),
        '--as',
        'card',
        '--force',
        '--out',
        path(out),
      ]);
      expect([status, err]).toEqual([2, expect.stringContaining(says)]);
      expect(err).not.toMatch(/ENOENT|EISDIR|\.part/);
    }
    expect(lstatSync(path('link.pdf')).isSymbolicLink()).toBe(true);
    expect(readFileSync(path('there.pdf'), 'utf8')).toBe('mine');
    expect(readdirSync(dirname(path('x'))).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

test('what the journal says of a version is printed and said, where somebody says it', async () => {
  await withFiles(FILES, async (path) => {
    const args = ['print', path('gloves.yaml'), '--as', 'card', '--out', path('card.pdf')];
    expect((await run([...args, '--stage', 'draft'])).out).toContain(
      'Pocket card, DRAFT, NOT APPROVED, version',
    );
    expect((await run([...args, '--force'])).out).not.toContain('APPROVED');
    const { status, err } = await run([...args, '--force', '--stage', 'safe']);
    expect([status, err]).toEqual([2, expect.stringContaining('Allowed choices are not-recorded, draft')]);
  });
});
