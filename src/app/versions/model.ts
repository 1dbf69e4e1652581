// The versions in the journal as the pages list them, and what each act on one writes. Pure: state in, lists and entries
// out.
import type { Acceptance, Procedure } from '../../domain/procedure.ts';
import { hashOfText } from '../../journal/hash.ts';
import { type ProcedureVersion, versionInForce } from '../../journal/views/versions.ts';
import { overdueIn } from '../../versions/sending.ts';
import type { BookState, ToWrite, Writing } from '../journal/book.ts';
import type { Approval } from '../library.ts';
import { STAGE_NAMES } from './labels.ts';

/** A version with the procedure that it is one of. */
export interface Known {
  readonly procedure: string;
  readonly version: ProcedureVersion;
  readonly inForce: boolean;
}

const own = <Value>(record: Readonly<Record<string, Value>>, key: string): Value | undefined =>
  Object.hasOwn(record, key) ? record[key] : undefined;

export const versionNamed = (
  { versions }: Pick<BookState, 'versions'>,
  procedure: string,
  version: string,
): ProcedureVersion | undefined => own(own(versions.procedures, procedure) ?? {}, version);

/** The versions of a procedure, the last drafted first. */
export function versionsOf({ versions }: Pick<BookState, 'versions'>, procedure: string): readonly Known[] {
  const force = versionInForce(versions, procedure)?.version;
  return Object.values(own(versions.procedures, procedure) ?? {})
    .toSorted((a, b) => b.drafted.unitNumber - a.drafted.unitNumber)
    .map((version) => ({ procedure, version, inForce: version.version === force }));
}

export const allVersions = (state: Pick<BookState, 'versions'>): readonly Known[] =>
  Object.keys(state.versions.procedures)
    .toSorted()
    .flatMap((procedure) => versionsOf(state, procedure));

/** In addresses of the pages that show a file: by its content, which is never another. */
export const entryIdOf = ({ content }: Pick<ProcedureVersion, 'content'>): string =>
  `v-${content.slice(0, 16)}`;

export const stageText = ({ version, inForce }: Known): string =>
  inForce ? 'approved, in force' : STAGE_NAMES[version.stage];

/** As a paper says it. */
export const approvalOf = ({ stage, approved }: Pick<ProcedureVersion, 'stage' | 'approved'>): Approval => ({
  is: stage,
  ...(stage === 'approved' && approved ? { on: approved.on } : {}),
});

/** Ends in a word of its own: a last part with a dot in it, as '1.2', would be asked for as a file. */
export const versionPath = (procedure: string, version: string): string =>
  `/versions/${procedure}/${encodeURIComponent(version)}/read`;

/** A version's name out of an address, where the router has already read some of it. */
export function nameIn(address: string): string {
  try {
    return decodeURIComponent(address);
  } catch {
    return address;
  }
}

const departed = (
  of: { readonly procedure: string; readonly version: string; readonly content: string },
  { finding, step, surface, reason, review }: Acceptance,
  person: string,
): ToWrite => ({
  kind: 'departure.accepted',
  body: { ...of, finding, step: step ?? null, surface: surface ?? null, reason, person, reviewOn: review },
});

const ofVersion = (
  procedure: string,
  { version, content }: Pick<ProcedureVersion, 'version' | 'content'>,
) => ({
  procedure,
  version,
  content,
});

/** Whether a version still is what the screen showed. */
const asShown =
  (procedure: string, shown: Pick<ProcedureVersion, 'version' | 'content' | 'stage'>) =>
  (state: BookState): boolean => {
    const now = versionNamed(state, procedure, shown.version);
    return now?.stage === shown.stage && now.content === shown.content;
  };

export interface Sending {
  readonly procedure: string;
  readonly version: string;
  readonly text: string;
  readonly by: string;
  readonly to: readonly string[];
  /** What the text accepts in writing. */
  readonly accepted: readonly Acceptance[];
  /** The day on which it is pressed: a page may stay open over night. */
  readonly today: string;
}

/** A draft and its going to review, in one. */
export function sending({ procedure, version, text, by, to, accepted, today }: Sending): Writing {
  const of = { procedure, version, content: hashOfText(text) };
  return {
    by,
    entries: [
      { kind: 'procedure.drafted', body: { ...of, text } },
      { kind: 'procedure.sent-for-review', body: { ...of, to: [...to] } },
    ],
    fits: (state) =>
      overdueIn(accepted, today).length === 0 &&
      !['approved', 'retired'].includes(versionNamed(state, procedure, version)?.stage ?? ''),
  };
}

export interface Approving {
  readonly procedure: string;
  readonly version: ProcedureVersion;
  readonly file: Procedure;
  /** The first of them writes it down. */
  readonly people: readonly string[];
  readonly on: string;
  readonly reviewOn: string;
  /** The day on which it is pressed: a page may stay open over night. */
  readonly today: string;
  /** The version in force before, where it is retired with it. */
  readonly replaced?: ProcedureVersion;
}

/** The departures that come with it, the approval, and the end of the version before. */
export function approving(approval: Approving): Writing {
  const { procedure, version, file, people, on, reviewOn, replaced, today } = approval;
  const of = ofVersion(procedure, version);
  const [by = ''] = people;
  return {
    by,
    entries: [
      ...file.accepted.map((one) => departed(of, one, by)),
      { kind: 'procedure.approved', body: { ...of, people: [...people], on, reviewOn } },
      ...(replaced
        ? ([
            {
              kind: 'procedure.retired',
              body: { ...ofVersion(procedure, replaced), reason: `Replaced by version ${version.version}.` },
            },
          ] as const)
        : []),
    ],
    fits: (state) =>
      overdueIn(file.accepted, today).length === 0 &&
      asShown(procedure, version)(state) &&
      (replaced === undefined || versionInForce(state.versions, procedure)?.version === replaced.version),
  };
}

export const sendingBack = (
  procedure: string,
  version: ProcedureVersion,
  by: string,
  reason: string,
): Writing => ({
  by,
  entries: [{ kind: 'procedure.sent-back', body: { ...ofVersion(procedure, version), reason } }],
  fits: asShown(procedure, version),
});

export const retiring = (
  procedure: string,
  version: ProcedureVersion,
  by: string,
  reason: string,
): Writing => ({
  by,
  entries: [{ kind: 'procedure.retired', body: { ...ofVersion(procedure, version), reason } }],
  fits: asShown(procedure, version),
});
