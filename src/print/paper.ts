// What every paper shares: who speaks of what, the stamp, the cautions, short names. Built once per print.
import type { Person, Procedure, Step } from '../domain/procedure.ts';
import type { Verdict } from '../verify.ts';
import { type PrintWords, printWordsFor, RESULTS } from '../words/print/index.ts';
import type { Words } from '../words/words.ts';
import { momentsOf, type StepMoment } from './moments.ts';
import type { Block } from './model.ts';
import { capital } from '../words/capital.ts';

export interface Paper {
  readonly verdict: Verdict;
  readonly procedure: Procedure;
  readonly words: Words;
  readonly print: PrintWords;
  readonly moments: readonly StepMoment[];
}

export function paperOf(verdict: Verdict, words: Words): Paper {
  return {
    verdict,
    procedure: verdict.procedure,
    words,
    print: printWordsFor(words.language),
    moments: momentsOf(verdict),
  };
}

/** The file's own name of a zone or fixture. */
const ownName = (id: string): string => id.replaceAll('-', ' ');

/** 'Wearer'; with the file's own name where a role is there more than once. */
export function roleOf({ procedure, words }: Paper, id: string): string {
  const person = procedure.people.find((candidate) => candidate.id === id);
  if (!person) return id;
  const alike = procedure.people.filter(({ role }) => role === person.role);
  const role = capital(words.role(person.role));
  return alike.length === 1 ? role : `${role} (${ownName(id)})`;
}

export const whoOf = (paper: Paper, { who, helper, action }: Step): string =>
  helper === undefined || action === 'say'
    ? roleOf(paper, who)
    : `${roleOf(paper, who)} + ${roleOf(paper, helper)}`;

/** 'doffing area', with the file's own name where the room has more than one such zone. */
export function zoneName({ procedure, print }: Paper, id: string): string {
  const zone = procedure.zones.find((candidate) => candidate.id === id);
  if (!zone) return ownName(id);
  const alike = procedure.zones.filter(({ side }) => side === zone.side);
  return alike.length === 1 ? print.zone[zone.side] : `${print.zone[zone.side]} (${ownName(id)})`;
}

/** What a step's hold says, in one text. */
export function holdOf({ moments, print, words, procedure }: Paper, step: number): string | null {
  const holds = moments[step]?.holds ?? [];
  if (holds.length === 0) return null;
  return holds
    .map(({ who, next }) =>
      print.script.hold(words.person(procedure, who), next === undefined ? undefined : next + 1),
    )
    .join(' ');
}

/** Wearer, observer, assistant. */
export const roleNames = ({ words }: Paper): readonly [string, string, string] => [
  capital(words.role('wearer')),
  capital(words.role('observer')),
  capital(words.role('assistant')),
];

export const boxLabels = ({ print }: Paper): readonly string[] => RESULTS.map((one) => print.result[one]);

const wornBy = ({ words }: Paper, { wears }: Person): string =>
  wears.map((item) => words.item(item)).join(', ');

/** Who wears what at the start; a donning begins with nobody in equipment. */
export const peopleBlock = (paper: Paper): Block => ({
  is: 'facts',
  facts: paper.procedure.people
    .filter(({ wears }) => wears.length > 0)
    .map((person) => [paper.print.wears(roleOf(paper, person.id)), wornBy(paper, person)] as const),
});

/** What the check has against the procedure, in one sentence. */
export function standing({ verdict, print }: Paper, elsewhere = true): readonly Block[] {
  const errors = verdict.findings.filter(({ severity }) => severity === 'error').length;
  const more = elsewhere && errors > 0 ? ` ${print.seeDossier}` : '';
  return [
    { is: 'text', tone: 'boxed', text: `${print.errors(errors)}${more}` },
    ...(verdict.analyses.length === 0
      ? [{ is: 'text', tone: 'boxed', text: print.unfinished } as const]
      : []),
  ];
}

export const cautionBlocks = ({ print, words }: Paper): readonly Block[] => [
  { is: 'heading', level: 2, text: print.cautions },
  { is: 'list', numbered: false, title: null, items: [...words.cautions, ...words.reviewNote] },
];
