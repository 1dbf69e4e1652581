// A route in plain English: one sentence for each contact, and one for each cleaning that failed on the way.
import { itemKind } from '../../domain/items.ts';
import type { Finding, RouteLink } from '../../check/finding.ts';
import type { LedgerTurn } from '../../engine/ledger.ts';
import { readEvent } from '../events.ts';
import { namedBy } from '../surfaces.ts';
import type { RouteSentence, Setting } from '../words.ts';
import { handOf, joined, surfacePhrase, touchingPhrase } from './phrases.ts';
import { eventClause } from './slips.ts';
import { stepLabel } from './steps.ts';

/** Why a surface counts as contaminated before anybody has moved. */
function startReason(setting: Setting, surface: string): string {
  const stated = setting.start.find((state) => state.surface === surface);
  if (stated)
    return `the procedure says so${stated.reason === undefined ? '' : `: ${stated.reason.replace(/\.$/, '')}`}`;
  const named = namedBy(setting, surface);
  if (named.at !== 'fixture') return 'it faced the patient';
  const side = setting.zones.find((zone) => zone.id === named.fixture.zone)?.side;
  if (side === 'patient') return "it stands on the patient's side";
  return named.fixture.kind === 'chair'
    ? 'whoever still wears contaminated equipment sits on it'
    : 'it was touched before';
}

function startSentence(setting: Setting, { to, events }: RouteLink): string {
  const surface = surfacePhrase(setting, to);
  if (events.length > 0) return `At the start ${joined(events.map((key) => eventClause(setting, key)))}.`;
  const verb = surface.many ? 'are' : 'is';
  return `At the start ${surface.text} ${verb} taken as contaminated because ${startReason(setting, to)}.`;
}

const isLeak = (setting: Setting, from: string, to: string): boolean => {
  const [outer, inner] = [handOf(setting, from), handOf(setting, to)];
  return outer?.worn !== undefined && inner?.person === outer.person && inner.side === outer.side;
};

const partIs = (setting: Setting, id: string, part: string): boolean => {
  const named = namedBy(setting, id);
  return named.at === 'item' && named.part === part;
};

const isGround = (setting: Setting, id: string): boolean => {
  const named = namedBy(setting, id);
  return named.at === 'fixture' && (named.fixture.kind === 'floor' || named.fixture.kind === 'mat');
};

const isSole = (setting: Setting, id: string): boolean =>
  partIs(setting, id, 'sole') || /\.sole\.(left|right)$/.test(id);

/** The contact itself: who touches comes first, a hand before anything else. */
function contactClause(setting: Setting, from: string, to: string): string {
  const [a, b] = [touchingPhrase(setting, from), touchingPhrase(setting, to)];
  if (isLeak(setting, from, to)) return `what is on ${surfacePhrase(setting, from).text} gets to ${b.text}`;
  if (isSole(setting, from) && isGround(setting, to)) return `${a.text} stands on ${b.text}`;
  if (isSole(setting, to) && isGround(setting, from)) return `${b.text} stands on ${a.text}`;
  if (isLining(setting, from))
    return `${surfacePhrase(setting, from).text} lies on ${surfacePhrase(setting, to).text}`;
  if (isLining(setting, to))
    return `${surfacePhrase(setting, to).text} lies on ${surfacePhrase(setting, from).text}`;
  const [one, other] = handOf(setting, to) && !handOf(setting, from) ? [b, a] : [a, b];
  return `${one.text} ${one.many ? 'touch' : 'touches'} ${other.text}`;
}

/** A lining against what it covers; a hand at a lining touches it. */
function isLining(setting: Setting, id: string): boolean {
  const named = namedBy(setting, id);
  return (
    named.at === 'item' &&
    (named.part?.startsWith('inside') ?? false) &&
    itemKind(named.item).group !== 'glove'
  );
}

const at = (setting: Setting, index: number): string => {
  const step = setting.steps[index];
  return step ? `Step ${index + 1} (${stepLabel(setting, step)})` : 'At the start';
};

function linkSentence(setting: Setting, link: RouteLink): string {
  if (link.from === undefined) return startSentence(setting, link);
  const slips = link.events.map((key) => eventClause(setting, key));
  const contact =
    handOf(setting, link.from) || handOf(setting, link.to)
      ? touching(setting, link)
      : contactClause(setting, link.from, link.to);
  const because = slips.length > 0 ? `${joined(slips)}: ` : '';
  return `${at(setting, link.step)}: ${because}${contact}; ${surfacePhrase(setting, link.to).text} may now be contaminated.`;
}

/** A hand at a lining touches it, it does not lie on it. */
function touching(setting: Setting, { from = '', to }: RouteLink): string {
  if (isLeak(setting, from, to)) return contactClause(setting, from, to);
  const [hand, other] = handOf(setting, from) ? [from, to] : [to, from];
  return `${touchingPhrase(setting, hand).text} touches ${touchingPhrase(setting, other).text}`;
}

/** A slip of the combination that no contact needs: a cleaning that failed, a hole that was not seen. */
function failureSentence(setting: Setting, key: string): RouteSentence {
  const step = readEvent(setting, key)?.index ?? -1;
  return {
    text: `${at(setting, step)}: ${eventClause(setting, key)}, so what was contaminated stays so.`,
    step,
    events: [key],
  };
}

/** The sentences of a route in the order of the procedure. */
export function routeSentences(
  setting: Setting,
  { route, events }: Pick<Finding, 'route' | 'events'>,
): readonly RouteSentence[] {
  const told = new Set(route.flatMap((link) => link.events));
  const links = route.map((link): RouteSentence => ({ ...link, text: linkSentence(setting, link) }));
  const failures = events.filter((key) => !told.has(key)).map((key) => failureSentence(setting, key));
  return [...links, ...failures].sort((a, b) => a.step - b.step);
}

export const TURN_WORDS: Readonly<Record<LedgerTurn, string>> = {
  suspect: 'may become contaminated by a slip or circumstance',
  certain: 'is taken as contaminated though nobody slips',
  lessened: 'stays contaminated only if something went wrong',
  cleared: 'is no longer counted as contaminated: cleaned, replaced or gone',
};

export const turnSentence = (setting: Setting, turn: LedgerTurn, step: number): string =>
  `${at(setting, step)}: ${TURN_WORDS[turn]}.`;

export function cleanedSentence(setting: Setting, surface: string, step: number): string {
  const { text, many } = surfacePhrase(setting, surface);
  return `${at(setting, step)}: ${text} ${many ? 'are' : 'is'} cleaned.`;
}
