// A route in plain English: one sentence for each contact, and one for each cleaning that failed on the way.
import type { RouteLink } from '../../check/finding.ts';
import type { LedgerTurn } from '../../engine/ledger.ts';
import { contactOf, startReason } from '../contact.ts';
import type { RouteSayer } from '../routes.ts';
import type { Setting } from '../words.ts';
import { joined, surfacePhrase, touchingPhrase } from './phrases.ts';
import { eventClause } from './slips.ts';
import { stepLabel } from './steps.ts';

const REASONS = {
  faced: 'it faced the patient',
  'patient-side': "it stands on the patient's side",
  'sat-on': 'whoever still wears contaminated equipment sits on it',
  touched: 'it was touched before',
} as const;

function because(setting: Setting, surface: string): string {
  const found = startReason(setting, surface);
  if (found.why !== 'stated') return REASONS[found.why];
  return `the procedure says so${found.reason === undefined ? '' : `: ${found.reason}`}`;
}

function startSentence(setting: Setting, { to, events }: RouteLink): string {
  const surface = surfacePhrase(setting, to);
  if (events.length > 0) return `At the start ${joined(events.map((key) => eventClause(setting, key)))}.`;
  const verb = surface.many ? 'are' : 'is';
  return `At the start ${surface.text} ${verb} taken as contaminated because ${because(setting, to)}.`;
}

/** The contact itself: who touches comes first, a hand before anything else. */
function contactClause(setting: Setting, from: string, to: string): string {
  const { kind, one, other } = contactOf(setting, from, to);
  if (kind === 'leaks')
    return `what is on ${surfacePhrase(setting, one).text} gets to ${touchingPhrase(setting, other).text}`;
  if (kind === 'lies')
    return `${surfacePhrase(setting, one).text} lies on ${surfacePhrase(setting, other).text}`;
  const [a, b] = [touchingPhrase(setting, one), touchingPhrase(setting, other)];
  if (kind === 'stands') return `${a.text} stands on ${b.text}`;
  return `${a.text} ${a.many ? 'touch' : 'touches'} ${b.text}`;
}

const at = (setting: Setting, index: number): string => {
  const step = setting.steps[index];
  return step ? `Step ${index + 1} (${stepLabel(setting, step)})` : 'At the start';
};

function linkSentence(setting: Setting, link: RouteLink): string {
  if (link.from === undefined) return startSentence(setting, link);
  const slips = link.events.map((key) => eventClause(setting, key));
  const contact = contactClause(setting, link.from, link.to);
  const cause = slips.length > 0 ? `${joined(slips)}: ` : '';
  return `${at(setting, link.step)}: ${cause}${contact}; ${surfacePhrase(setting, link.to).text} may now be contaminated.`;
}

export const ROUTE: RouteSayer = {
  link: linkSentence,
  failure: (setting, key, step) =>
    `${at(setting, step)}: ${eventClause(setting, key)}, so what was contaminated stays so.`,
};

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
