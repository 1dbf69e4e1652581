// Routes and turns of the ledger in plain sentences.
import type { RouteLink } from '../../check/finding.ts';
import type { LedgerTurn } from '../../engine/ledger.ts';
import { contactOf, startReason } from '../contact.ts';
import type { RouteSayer } from '../routes.ts';
import type { Setting } from '../words.ts';
import { capital } from '../capital.ts';
import { surfacePhrase, touchingPhrase } from './phrases.ts';
import { eventClause } from './slips.ts';
import { stepLabel } from './steps.ts';
import type { Tongue } from './tongue.ts';

function at({ nouns, routes, ...rest }: Tongue, setting: Setting, index: number): string {
  const step = setting.steps[index];
  const tongue = { nouns, routes, ...rest };
  return step
    ? `${capital(nouns.step.one)} ${index + 1} (${stepLabel(tongue, setting, step)})`
    : routes.atStart;
}

const clausesOf = (tongue: Tongue, setting: Setting, events: readonly string[]): string =>
  tongue.grammar.joined(events.map((key) => eventClause(tongue, setting, key)));

function startSentence(tongue: Tongue, setting: Setting, { to, events }: RouteLink): string {
  const { startEvents, startTaken } = tongue.routes;
  return events.length > 0
    ? startEvents(clausesOf(tongue, setting, events))
    : startTaken(surfacePhrase(tongue, setting, to), startReason(setting, to));
}

function contactClause(tongue: Tongue, setting: Setting, from: string, to: string): string {
  const { kind, one, other } = contactOf(setting, from, to);
  // What leaks and what lies is named as a thing; a hand that touches as a hand.
  const first = kind === 'leaks' || kind === 'lies' ? surfacePhrase : touchingPhrase;
  const second = kind === 'lies' ? surfacePhrase : touchingPhrase;
  return tongue.routes.contact[kind](first(tongue, setting, one), second(tongue, setting, other));
}

function linkSentence(tongue: Tongue, setting: Setting, link: RouteLink): string {
  if (link.from === undefined) return startSentence(tongue, setting, link);
  const cause = link.events.length > 0 ? `${clausesOf(tongue, setting, link.events)}: ` : '';
  const contact = contactClause(tongue, setting, link.from, link.to);
  const then = tongue.routes.mayBe(surfacePhrase(tongue, setting, link.to));
  return `${at(tongue, setting, link.step)}: ${cause}${contact}; ${then}.`;
}

export const routeSayer = (tongue: Tongue): RouteSayer => ({
  link: (setting, link) => linkSentence(tongue, setting, link),
  failure: (setting, key, step) =>
    `${at(tongue, setting, step)}: ${tongue.routes.failure(eventClause(tongue, setting, key))}.`,
});

export const turnSentence = (tongue: Tongue, setting: Setting, turn: LedgerTurn, step: number): string =>
  `${at(tongue, setting, step)}: ${tongue.routes.turns[turn]}.`;

export const cleanedSentence = (tongue: Tongue, setting: Setting, surface: string, step: number): string =>
  `${at(tongue, setting, step)}: ${tongue.routes.cleaned(surfacePhrase(tongue, setting, surface))}.`;
