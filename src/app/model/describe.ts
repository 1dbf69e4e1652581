// The picture in words, for those who cannot see it and for all who want to be sure: who wears what, outermost first,
// what is contaminated though nobody slips, what it takes slips to contaminate, what touches what.
import type { Procedure } from '../../domain/procedure.ts';
import type { Words } from '../../words/words.ts';
import type { FixtureView, PersonView, PictureView, SeenSurface } from './picture.ts';
import { capital } from '../../words/capital.ts';

type Speaker = Pick<Words, 'person' | 'item' | 'surface'>;

/** Long lists are cut and counted: a sentence that nobody can hear to its end says nothing. */
function listed(names: readonly string[], most = 14): string {
  const shown = names.slice(0, most);
  const rest = names.length - shown.length;
  return `${shown.join(', ')}${rest > 0 ? `, and ${rest} more` : ''}`;
}

function wornBy(person: PersonView, words: Speaker): readonly string[] {
  return person.layers
    .toReversed()
    .map(({ item, side }) => (side ? `${side} ${words.item(item)}` : words.item(item)));
}

function surfacesOf(person: PersonView): readonly SeenSurface[] {
  const drawn = person.layers
    .flatMap((layer) => layer.parts)
    .filter((part) => person.drawn.has(part.surface));
  return [...person.bare, ...drawn, ...person.hidden];
}

function marked(surfaces: readonly SeenSurface[], mark: SeenSurface['mark']): readonly SeenSurface[] {
  const found = surfaces.filter((one) => one.mark === mark);
  return [...new Map(found.map((one) => [one.surface, one])).values()];
}

function ofPerson(procedure: Procedure, person: PersonView, words: Speaker): readonly string[] {
  const who = capital(words.person(procedure, person.id));
  const surfaces = surfacesOf(person);
  const name = (one: SeenSurface): string => words.surface(procedure, one.surface);
  const contaminated = marked(surfaces, 'contaminated').map(name);
  const slips = marked(surfaces, 'slips').map((one) => `${name(one)} (${one.least})`);
  return [
    `${who} wears, outermost first: ${wornBy(person, words).join(', ') || 'nothing'}.`,
    ...(contaminated.length > 0 ? [`Contaminated though nobody slips: ${listed(contaminated)}.`] : []),
    ...(slips.length > 0
      ? [`Contaminated only by slips or circumstances (how many at least): ${listed(slips)}.`]
      : []),
  ];
}

function ofFixtures(
  procedure: Procedure,
  fixtures: readonly FixtureView[],
  words: Speaker,
): readonly string[] {
  const contaminated = fixtures.filter((one) => one.mark === 'contaminated');
  const slips = fixtures.filter((one) => one.mark === 'slips');
  const name = (one: FixtureView): string => words.surface(procedure, one.surface);
  return [
    ...(contaminated.length > 0
      ? [`In the room, contaminated though nobody slips: ${listed(contaminated.map(name))}.`]
      : []),
    ...(slips.length > 0 ? [`In the room, only by slips or circumstances: ${listed(slips.map(name))}.`] : []),
  ];
}

/** What touches what, one line each, always before by a slip; resting contacts last. */
function touchLines(procedure: Procedure, view: PictureView, words: Speaker): readonly string[] {
  return view.touches
    .filter(({ kind }) => kind === 'always')
    .map(({ a, b }) => `${words.surface(procedure, a)} touches ${words.surface(procedure, b)}`);
}

/** What is cleaned, and what of it does not count against the agent. */
export function cleanedLines(procedure: Procedure, view: PictureView, words: Speaker): readonly string[] {
  const of = (credited: boolean): readonly string[] =>
    view.cleaned
      .filter((one) => one.credited === credited)
      .map(({ surface }) => words.surface(procedure, surface));
  const [counted, not] = [of(true), of(false)];
  return [
    ...(counted.length > 0 ? [`Cleaned in this step, unless it goes wrong: ${listed(counted)}.`] : []),
    ...(not.length > 0
      ? [`Wiped or rubbed, which does not count against this agent here: ${listed(not)}.`]
      : []),
  ];
}

/** The picture as sentences. */
export function describePicture(procedure: Procedure, view: PictureView, words: Speaker): readonly string[] {
  const touching = view.moment === 'before' ? touchLines(procedure, view, words) : [];
  return [
    view.moment === 'before' ? `As step ${view.step + 1} begins.` : `As step ${view.step + 1} ends.`,
    ...view.people.flatMap((person) => ofPerson(procedure, person, words)),
    ...ofFixtures(procedure, view.fixtures, words),
    ...(touching.length > 0 ? [`In this step ${listed(touching)}.`] : []),
    ...(view.moment === 'before' ? cleanedLines(procedure, view, words) : []),
  ];
}
