// What stands around the steps: the source, the stated start, the unit's own rules, and what it accepts in writing. Every edit
// is a new draft whose file reads back as itself.
import { isAcceptable } from '../../../check/acceptance.ts';
import type { Finding } from '../../../check/finding.ts';
import type {
  Acceptance,
  Policy,
  Procedure,
  ProcedureSource,
  StartingState,
} from '../../../domain/procedure.ts';
import { fixtureSurfaces, personSurfaces } from '../../../language/surfaces.ts';

export const NEW_SOURCE: ProcedureSource = {
  title: 'Title of the document',
  publisher: 'Who published it',
  seen: 'What was read at the source',
};

const NEEDED: ReadonlySet<keyof ProcedureSource> = new Set(['title', 'publisher', 'seen']);

/** A field that may be absent is taken out when nothing is left in it. */
export function changeSource(procedure: Procedure, field: keyof ProcedureSource, text: string): Procedure {
  const { [field]: _, ...others } = procedure.source ?? NEW_SOURCE;
  const source = text === '' && !NEEDED.has(field) ? others : { ...others, [field]: text };
  return { ...procedure, source: source as ProcedureSource };
}

export function withoutSource(procedure: Procedure): Procedure {
  const { source: _, ...rest } = procedure;
  return rest;
}

/** Surfaces whose state at the start can be stated: what people wear from the start, their skin, and the room. */
export function startSurfaces({ people, fixtures, start }: Procedure): readonly string[] {
  const ofPeople = people.flatMap(({ id, underneath, wears }) =>
    personSurfaces(id, [...underneath, ...wears]),
  );
  const ofRoom = fixtures.flatMap(({ id, kind }) => fixtureSurfaces(id, kind));
  const stated = new Set(start.map(({ surface }) => surface));
  return [...ofPeople, ...ofRoom].filter((surface) => !stated.has(surface));
}

export const stateStart = (procedure: Procedure, surface: string): Procedure => ({
  ...procedure,
  start: [...procedure.start, { surface, state: 'contaminated' }],
});

export function changeStart(procedure: Procedure, surface: string, part: Partial<StartingState>): Procedure {
  const start = procedure.start.map((one): StartingState => {
    if (one.surface !== surface) return one;
    const { reason, ...rest } = { ...one, ...part };
    return reason === undefined || reason === '' ? rest : { ...rest, reason };
  });
  return { ...procedure, start };
}

export const unstateStart = (procedure: Procedure, surface: string): Procedure => ({
  ...procedure,
  start: procedure.start.filter((one) => one.surface !== surface),
});

/** `observer: undefined` relies on nobody. */
export function changePolicy(procedure: Procedure, part: Partial<Record<keyof Policy, unknown>>): Procedure {
  const { observer, ...rest } = { ...procedure.policy, ...part } as Policy;
  return { ...procedure, policy: observer === undefined ? rest : { ...rest, observer } };
}

export interface Acceptable {
  readonly finding: string;
  readonly step?: string;
  readonly surface?: string;
}

/** What the check found that can be accepted and is not yet, once each. */
export function acceptables({ steps }: Procedure, findings: readonly Finding[]): readonly Acceptable[] {
  const found = new Map<string, Acceptable>();
  for (const { code, steps: at, surface, accepted } of findings) {
    if (!isAcceptable(code) || accepted) continue;
    const step = at[0] === undefined ? undefined : steps[at[0]]?.id;
    const one: Acceptable = {
      finding: code,
      ...(step === undefined ? {} : { step }),
      ...(surface === undefined ? {} : { surface }),
    };
    found.set(JSON.stringify(one), one);
  }
  return [...found.values()];
}

export const accept = (procedure: Procedure, acceptance: Acceptance): Procedure => ({
  ...procedure,
  accepted: [...procedure.accepted, acceptance],
});

/** The same departure, accepted anew. */
export const renew = (
  procedure: Procedure,
  index: number,
  said: Pick<Acceptance, 'reason' | 'by' | 'date' | 'review'>,
): Procedure => ({
  ...procedure,
  accepted: procedure.accepted.map((one, at) => (at === index ? { ...one, ...said } : one)),
});

export const withdraw = (procedure: Procedure, index: number): Procedure => ({
  ...procedure,
  accepted: procedure.accepted.filter((_, at) => at !== index),
});
