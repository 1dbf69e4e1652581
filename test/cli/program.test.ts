// The commands as a user meets them: what they print, what they refuse, and the exit status that scripts rely on.
import { spawnSync } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { describe, expect, test } from 'vitest';
import { faultOf } from '../../src/cli/input.ts';
import { pipeChunks } from '../../src/cli/pipe.ts';
import { CAUTIONS } from '../../src/words/index.ts';
import { gloves, OPEN, run, withFiles } from './run.ts';

const EVERYDAY = 'procedures/everyday-example-1-doffing.yaml';
const flat = (text: string): string => text.replaceAll(/\s+/g, ' ');

describe('help, version and what cannot be understood', () => {
  test.each([[['--help']], [['check', '--help']], [['replay', '--help']]])(
    '%j ends with the cautions, status 0',
    async (args) => {
      const { status, out } = await run(args);
      expect(status).toBe(0);
      for (const caution of CAUTIONS) expect(flat(out)).toContain(caution);
    },
  );

  test('--version is the package version', async () => {
    expect(await run(['--version'])).toEqual({ status: 0, out: '0.1.0\n', err: '' });
  });

  test.each([
    [['chek', 'x']],
    [[]],
    [['check']],
    [['check', '--agnet', 'all', EVERYDAY]],
    [['check', '--agent', 'bacteria', EVERYDAY]],
    [['replay', EVERYDAY]],
    [['explain', EVERYDAY]],
  ])('%j is refused with status 2, and says so on the error stream only', async (args) => {
    const { status, out, err } = await run(args);
    expect(status).toBe(2);
    expect(out).toBe('');
    expect(err).not.toBe('');
  });
});

test('what a file wants said of it cannot steer the terminal', async () => {
  const { status, err } = await run(
    ['check', '-'],
    OPEN.replace('kind: doffing', String.raw`kind: "\e[2Jx\a"`),
  );
  expect(status).toBe(2);
  expect(err).toContain('unknown-kind');
  expect(err.replaceAll('\n', '')).not.toMatch(/\p{Cc}/u);
});

describe('check', () => {
  test('errors give status 1; every error is told in full, with route, mends and sources', async () => {
    const { status, out, err } = await run(['check', '-'], OPEN);
    expect([status, err]).toEqual([1, '']);
    expect(out).toContain('Route:');
    expect(out).toContain('What would mend it (each was tried):');
    expect(out).toContain('At the start');
    expect(out).toContain('may now be contaminated.');
    expect(out).toMatch(/\d+ errors?, \d+ notes?\./);
    expect(out).not.toContain('undefined');
    for (const caution of CAUTIONS) expect(flat(out)).toContain(caution);
  });

  test('where no mend that was tried helps, it says so', async () => {
    const { out } = await run(['explain', EVERYDAY, 'one-slip.skin']);
    const told = out.split(/\n\n/).filter((one) => one.includes('[one-slip.skin]') && one.includes('Route:'));
    expect(told.length).toBeGreaterThan(0);
    for (const one of told) expect(one).toMatch(/What would mend it|None of the mends that this check tries/);
  });

  test('no chance stands without what it rests on', async () => {
    const { out } = await run(['check', EVERYDAY]);
    const chances = out
      .split('\n')
      .filter((line) => /^\s+(\d|no route).* %/.test(line) || line.includes('Chance of'));
    expect(chances.length).toBeGreaterThan(5);
    for (const line of chances) expect(line).toMatch(/\((judgement|from memory|published|common practice)\)/);
  });

  test('only notes give status 0', async () => {
    await withFiles({ 'gloves.yaml': gloves() }, async (path) => {
      const { status, out } = await run(['check', path('gloves.yaml')]);
      expect(out).not.toMatch(/^\d+ errors?$/m);
      expect(out).toContain('0 errors');
      expect(status).toBe(0);
    });
  });

  test('the worst of several files decides, and a bad one does not stop the others', async () => {
    await withFiles({ 'gloves.yaml': gloves(), 'bad.yaml': 'doffline: 1\n' }, async (path) => {
      const { status, out, err } = await run(['check', path('bad.yaml'), path('gloves.yaml')]);
      expect(status).toBe(2);
      expect(err).toMatch(/bad\.yaml:1:1: error missing-key: "title" is missing\./);
      expect(out).toContain('Gloves only (invented)');
      expect((await run(['check', path('gloves.yaml'), EVERYDAY])).status).toBe(1);
    });
  });

  test('standard input is read for -', async () => {
    const { status, out } = await run(['check', '-'], gloves());
    expect(status).toBe(0);
    expect(out).toContain('standard input: doffing');
  });

  test('--agent all checks against both kinds', async () => {
    const { out } = await run(['check', '--agent', 'all', '-'], gloves());
    expect(out).toContain('checked against: enveloped agent and non-enveloped agent');
    expect(out).toContain('non-enveloped agent');
  });

  test('alcohol rub counts against an enveloped agent only (Casanova 2016)', async () => {
    // A soiled glove is rubbed before it touches the face.
    const text = gloves(['- {do: sanitise, with: alcohol-hand-rub}', '- {do: touch, place: face}']);
    const errors = async (agent: string): Promise<string> =>
      (await run(['explain', '--agent', agent, '-', 'wearer.face'], text)).out;
    expect(await errors('enveloped')).toContain('Barriers: 1 at any moment');
    expect(await errors('non-enveloped')).toContain('Barriers: 0 (open) at any moment');
  });

  test('colour only where it is wanted', async () => {
    const sign = String.fromCodePoint(27);
    expect((await run(['check', EVERYDAY], '', true)).out).toContain(`${sign}[31m`);
    expect((await run(['check', EVERYDAY])).out).not.toContain(sign);
  });
});

describe('files that cannot be read', () => {
  test.each([
    ['nowhere.yaml', 'file-missing', 'There is no such file.'],
    ['procedures', 'file-is-folder', 'This is a folder.'],
    ['package.json/x', 'file-missing', 'There is no such file.'],
    ['/dev/null', 'empty-file', 'The file holds no procedure.'],
  ])('%s: %s', async (path, code, wrong) => {
    const { status, out, err } = await run(['check', path]);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(`error ${code}: ${wrong}`);
  });

  test('binary, too large, and a name with control characters', async () => {
    const files = {
      'image.yaml': new Uint8Array([137, 80, 78, 71, 0, 1]),
      'large.yaml': new Uint8Array(9 * 1024 * 1024),
    };
    await withFiles(files, async (path) => {
      expect((await run(['check', path('image.yaml')])).err).toMatch(/error (not-text|control-character)/);
      expect((await run(['check', path('large.yaml')])).err).toContain('error file-too-large');
    });
    const { err } = await run(['check', `a${String.fromCodePoint(27)}[31mb`]);
    expect(err).toContain('a?[31mb:1:1: error file-missing');
  });

  test.each([
    ['EACCES', 'file-not-permitted'],
    ['EPERM', 'file-not-permitted'],
    ['ENAMETOOLONG', 'file-missing'],
    ['EIO', 'file-unreadable'],
  ])('%s of the file system is %s', (code, said) => {
    const { fault } = faultOf(Object.assign(new Error('x'), { code }));
    expect(fault).toMatchObject({ code: said, severity: 'error' });
    expect(fault.wrong).toMatch(/^[A-Z].+\.$/);
  });

  test('a donning that is named but cannot be read is an error, and the rest is still said', async () => {
    const text = gloves().replace('invented: true', 'invented: true\ndonning: donning.yaml');
    await withFiles({ 'gloves.yaml': text }, async (path) => {
      const { status, out, err } = await run(['check', path('gloves.yaml')]);
      expect(status).toBe(2);
      expect(err).toContain('error donning-unreadable: The donning "donning.yaml"');
      expect(out).toContain('Gloves only (invented)');
      expect(flat(out)).toContain(CAUTIONS[0]);
    });
    await withFiles({ 'gloves.yaml': text, 'donning.yaml': 'nothing: here\n' }, async (path) => {
      expect((await run(['check', path('gloves.yaml')])).err).toContain('has errors, the first in line 1');
    });
  });
});

describe('what a procedure file may name', () => {
  const named = async (donning: string, files: Readonly<Record<string, string>> = {}) => {
    const text = gloves().replace('invented: true', `invented: true\ndonning: ${donning}`);
    let said = { status: -1, out: '', err: '' };
    await withFiles({ 'gloves.yaml': text, ...files }, async (path) => {
      said = await run(['check', path('gloves.yaml')]);
    });
    return said;
  };

  test.each([
    ['/etc/passwd', 'is not named relative to this file.'],
    ['../../etc/passwd', 'is not the name of a procedure file (.yaml).'],
    ['"-"', 'is not the name of a procedure file (.yaml).'],
    ['nowhere.yaml', 'cannot be read. There is no such file.'],
    ['gloves.yaml', 'is a doffing itself.'],
    ['other.yaml', 'has errors, the first in line 1.'],
  ])('not %s', async (donning, why) => {
    const { status, out, err } = await named(donning, { 'other.yaml': 'root:x:0:0\n' });
    expect(status).toBe(2);
    expect(flat(err)).toContain(why);
    // Nothing of what stands in the other file is shown.
    expect(out + err).not.toContain('root:x');
    expect(out).toContain('Gloves only (invented)');
  });
});

describe('pipes', () => {
  const withPipe = async (use: (pipe: string) => Promise<void>): Promise<void> =>
    withFiles({}, async (path) => {
      const pipe = path('pipe');
      expect(spawnSync('mkfifo', [pipe]).status).toBe(0);
      await use(pipe);
    });

  test('what is written into a pipe is read to its end', async () => {
    await withPipe(async (pipe) => {
      const writer = writeFile(pipe, gloves());
      const { status, out } = await run(['check', pipe]);
      await writer;
      expect([status, out]).toEqual([0, expect.stringContaining('Gloves only (invented)')]);
    });
  });

  test('a pipe into which nobody writes is given up, and said so', async () => {
    await withPipe(async (pipe) => {
      const reading = pipeChunks(pipe, 100).next();
      await expect(reading).rejects.toMatchObject({ code: 'ESILENT' });
    });
    expect(faultOf(Object.assign(new Error('x'), { code: 'ESILENT' })).fault.code).toBe('file-silent');
  });
});

describe('explain', () => {
  test('a code, or its beginning, tells its findings in full', async () => {
    const { status, out } = await run(['explain', '-', 'open'], OPEN);
    expect(status).toBe(0);
    expect(out).toContain('[open.');
    expect(out).not.toContain('[one-slip.');
    expect(out).toContain('Route:');
  });

  test('a surface tells barriers, combinations, route and when it changed', async () => {
    for (const asked of [['wearer.face'], ['face'], ["the wearer's face"], ['Wearer', 'face']]) {
      const { status, out } = await run(['explain', EVERYDAY, ...asked]);
      expect(status).toBe(0);
      expect(out).toMatch(/^the wearer's face \(wearer\.face\)/);
      for (const part of [
        'Barriers:',
        'Chance:',
        'minimal combinations',
        'Route of the first:',
        'When it changed:',
        'Replay:',
      ])
        expect(out).toContain(part);
    }
  });

  test('equipment is told too, though it is not protected', async () => {
    const { out } = await run(['explain', '-', 'wearer.gloves.left.outside'], OPEN);
    expect(out).toContain('Not a protected surface');
    expect(out).toContain('is taken as contaminated though nobody slips');
  });

  test.each([
    ['wearer.hnd.left', 'Did you mean: wearer.hand.left'],
    ['one-slip.skn', 'Did you mean: one-slip.skin'],
    ['qqqq', 'no finding and no single surface is called "qqqq"'],
  ])('a miss (%s) says what may be meant, status 2', async (asked, said) => {
    const { status, out, err } = await run(['explain', EVERYDAY, asked]);
    expect([status, out]).toEqual([2, '']);
    expect(err).toContain(said);
    expect(err).toContain('Codes found here:');
  });
});

describe('replay', () => {
  const idIn = async (text: string): Promise<string> => {
    const { out } = await run(['explain', '-', 'wearer.hand.left'], text);
    return /Replay: (\S+)/.exec(out)?.[1] ?? '';
  };

  test('runs exactly the slips of a combination and ends with what they reach', async () => {
    const id = await idIn(gloves());
    const { status, out } = await run(['replay', '-', id], gloves());
    expect(status).toBe(0);
    expect(out).toContain('What goes wrong:');
    expect(out).toContain('At the start these are taken as contaminated');
    expect(out).toContain('Protected surfaces that may be contaminated:');
    expect(out).toContain("- the wearer's left hand");
  });

  test('an id of another version of the procedure is refused', async () => {
    const id = await idIn(gloves());
    const { status, err } = await run(['replay', '-', id], gloves(['- {do: inspect}']));
    expect(status).toBe(2);
    expect(err).toContain('belongs to another version of this procedure');
  });

  test('what is no id, or names a slip too many, is refused', async () => {
    const id = await idIn(gloves());
    for (const wrong of ['nonsense', '', `${id}.zzz`, '-1']) {
      const { status, out } = await run(['replay', '--', '-', wrong], gloves());
      expect([status, out]).toEqual([2, '']);
    }
  });
});
