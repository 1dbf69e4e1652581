// Runs the command line in this process, as the shell would: arguments in, what it said and its exit status out.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { main } from '../../src/cli/program.ts';

export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

export async function run(args: readonly string[], stdin = '', colour = false): Promise<Ran> {
  let out = '';
  let err = '';
  const status = await main(args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    stdin: async function* () {
      await Promise.resolve();
      yield new TextEncoder().encode(stdin);
    },
    colour,
  });
  return { status, out, err };
}

/** A folder with these files, for as long as `work` takes. */
export async function withFiles<Result>(
  files: Readonly<Record<string, string | Uint8Array>>,
  work: (path: (name: string) => string) => Promise<Result>,
): Promise<Result> {
  const folder = mkdtempSync(join(tmpdir(), 'doffline-'));
  try {
    for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
    return await work((name) => join(folder, name));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const lines = (steps: readonly string[]): string => steps.map((line) => `  ${line}\n`).join('');

/** Gloves alone, taken off and rubbed: small, and quick to check. `first` and `then` are further lines of steps. */
export const gloves = (first: readonly string[] = [], then: readonly string[] = []): string => `doffline: 1
title: Gloves only (invented)
kind: doffing
version: "1"
invented: true
people:
  wearer: {wears: [gloves], underneath: [scrubs], leaves-bare: [scalp, ears, face, eyes, nose, mouth, neck, chest, waist, back, seat, arm, thigh, shin, ankle], starts: doffing-area}
room:
  zones: {patient-room: patient, doffing-area: doffing, clean-side: clean}
  fixtures: {bin: {kind: bin, zone: doffing-area, worked: pedal}}
products: [alcohol-hand-rub]
steps:
${lines(first)}  - {id: gloves-off, do: remove, item: gloves}
${lines(then)}  - {id: rub, do: sanitise, with: alcohol-hand-rub}
`;

/** A gloved hand goes to the face: an open route. */
export const OPEN = gloves(['- {id: scratch, do: touch, place: face}']);
