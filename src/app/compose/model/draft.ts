// Where a draft comes from and what becomes of it: nothing, a copy of a procedure, a file; and the file again, exactly as
// the language prints it. A draft is a procedure whose steps may still be missing.
import { cutTo, LONGEST } from '../../../domain/lengths.ts';
import type { Procedure, ProcedureKind } from '../../../domain/procedure.ts';
import { type Diagnostic, printProcedure, readProcedure } from '../../../language/index.ts';
import { addFixture, addZone } from './room.ts';
import { addPerson } from './people.ts';
import { renamed } from './names.ts';

const EMPTY: Procedure = {
  title: 'A new procedure',
  kind: 'doffing',
  version: '1',
  invented: false,
  agents: ['enveloped'],
  people: [],
  zones: [],
  fixtures: [],
  products: ['alcohol-hand-rub'],
  start: [],
  policy: { creditSpraying: false },
  steps: [],
  accepted: [],
};

/** Nothing yet but a wearer and a room of three zones with a bin and hand rub where things come off. */
export function fromNothing(kind: ProcedureKind): Procedure {
  const title = kind === 'doffing' ? 'A new doffing' : 'A new donning';
  const zones = ['patient', 'doffing', 'clean'] as const;
  const room = zones.reduce<Procedure>((procedure, side) => addZone(procedure, side), {
    ...EMPTY,
    title,
    kind,
  });
  const roomy = renamed(room, 'zone', 'patient-area', 'patient-room');
  const binned = renamed(addFixture(roomy, 'bin', 'doffing-area'), 'fixture', 'bin', 'waste-bin');
  const rubbed = renamed(addFixture(binned, 'dispenser', 'doffing-area'), 'fixture', 'dispenser', 'hand-rub');
  return addPerson(rubbed, 'wearer');
}

export interface Imported {
  readonly procedure?: Procedure;
  readonly diagnostics: readonly Diagnostic[];
  /** The text has comments, which a procedure does not hold. */
  readonly comments: boolean;
}

const COMMENT = /^(?:[^"'\n]|"[^"\n]*"|'[^'\n]*')*?(?:^|\s)#/m;
/** A line for editors that says where the shape is written down; nobody misses it. */
const SCHEMA_LINE = /^# yaml-language-server:.*$/gm;

/** A file's text as a draft. */
export function fromText(text: string, fileName: string): Imported {
  const { procedure, diagnostics } = readProcedure(text, fileName);
  const comments = COMMENT.test(text.replaceAll(SCHEMA_LINE, ''));
  return { ...(procedure ? { procedure } : {}), diagnostics, comments };
}

/** A copy says that it is one, and counts as a version of its own. */
export const asCopy = (procedure: Procedure): Procedure => ({
  ...procedure,
  title: cutTo(LONGEST.label, `Copy of ${procedure.title}`),
});

/** The file. */
export const textOf = (procedure: Procedure): string => printProcedure(procedure);

/** 'A new doffing' is saved as 'a-new-doffing.yaml'. */
export function fileNameOf({ title }: Procedure): string {
  const name = title
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${name || 'procedure'}.yaml`;
}
