// Protected surfaces in groups by how much must go wrong, worst first; what is found by typing; and their ids in the address.
import type { SurfaceVerdict } from '../../check/finding.ts';
import type { Procedure } from '../../domain/procedure.ts';
import { type Group, groupsOf, holds } from '../model/finder.ts';
import { byWorst } from '../model/verdicts.ts';
import { words } from '../words.ts';

const GRADES = ['0', '1', '2', '3', 'none'] as const;
type Grade = (typeof GRADES)[number];

export const GRADE_TITLES: Readonly<Record<Grade, string>> = {
  0: 'Open routes: contaminated though nobody slips',
  1: 'One slip or circumstance is enough',
  2: 'Two must come together',
  3: 'Three or more must come together',
  none: 'No route found by this check',
};

/** Open from the start: what needs somebody to act on it. */
export const WORST: readonly Grade[] = ['0', '1'];

export const gradeOf = ({ barriers }: Pick<SurfaceVerdict, 'barriers'>): Grade =>
  barriers === null ? 'none' : (GRADES[Math.min(barriers, 3)] ?? 'none');

/** In the address behind its '#', and on the page. */
export const anchorOf = ({ surface, agent }: Pick<SurfaceVerdict, 'surface' | 'agent'>): string =>
  `${surface}:${agent}`;

/** The surface that an address points to; without an agent the first of that name. */
export const pointedTo = (verdicts: readonly SurfaceVerdict[], id: string): SurfaceVerdict | undefined =>
  verdicts.find((one) => anchorOf(one) === id) ?? verdicts.find(({ surface }) => surface === id);

const textOf = (procedure: Procedure, { surface, class: kind, agent }: SurfaceVerdict): string =>
  [surface, words.surface(procedure, surface), words.surfaceClass(kind), words.agent(agent)].join(' ');

/** Those that hold every word of the search, by grade and within it the likelier first. */
export const gradesFound = (
  procedure: Procedure,
  verdicts: readonly SurfaceVerdict[],
  search: string,
): readonly Group<SurfaceVerdict, Grade>[] =>
  groupsOf(byWorst(verdicts.filter((one) => holds(textOf(procedure, one), search))), gradeOf);
