// Findings and problems: what each speaks of is put together here, the sentences stand in the language's tables.
import type { Finding, FindingKind } from '../../check/finding.ts';
import type { SurfaceClass } from '../../contacts/plan.ts';
import { type Problem, PROBLEM_CODES } from '../../contacts/problem.ts';
import { ACTION_IDS } from '../../domain/actions.ts';
import { SIDES } from '../../domain/places.ts';
import { PRODUCT_IDS } from '../../domain/products.ts';
import { FIXTURE_KIND_IDS } from '../../domain/room.ts';
import { slipOf } from '../../domain/slips.ts';
import { acceptanceSaid } from '../accepted.ts';
import { readEvent } from '../events.ts';
import { ruleOf } from '../figures.ts';
import { barriersGiven, isWearer, oneOf } from '../given.ts';
import type { Explained, Setting, WrongAndMend } from '../words.ts';
import { type Phrase, the } from './grammar.ts';
import { capital } from '../capital.ts';
import { fixturePhrase, itemIn, personPhrase, placePhrase, surfacePhrase } from './phrases.ts';
import { eventClause, eventSentence } from './slips.ts';
import { stepLabel, stepReference } from './steps.ts';
import type { Told, Tongue } from './tongue.ts';

/** '0' is an open route, `null` nothing at all. */
export const barrierWords = ({ labels }: Tongue, barriers: number | null): string =>
  barriers === null ? labels.noRoute : barriers === 0 ? `0 (${labels.open})` : String(barriers);

/** A fixture by its id, or one of a kind. */
function fixtureIn(tongue: Tongue, setting: Setting, id: string | undefined): Phrase {
  const { grammar, nouns } = tongue;
  if (id === undefined || id === '') return the(grammar, nouns.thing);
  const kind = oneOf(FIXTURE_KIND_IDS, id);
  if (kind === undefined || setting.fixtures.some((fixture) => fixture.id === id))
    return fixturePhrase(tongue, setting, id);
  const { one, gender } = nouns.fixtures[kind];
  return { text: grammar.some(one, gender), gender, many: false };
}

export function problemWords(
  tongue: Tongue,
  setting: Setting,
  { code, params }: Pick<Problem, 'code' | 'params'>,
): WrongAndMend {
  const { grammar, nouns, labels } = tongue;
  const product = oneOf(PRODUCT_IDS, params.product);
  const action = oneOf(ACTION_IDS, params.action);
  const side = oneOf(SIDES, params.side);
  return tongue.problems.codes[code]({
    item: itemIn(tongue, params.item, params.side),
    by: itemIn(tongue, params.by),
    who:
      params.person === undefined
        ? the(grammar, nouns.roles.wearer)
        : personPhrase(tongue, setting, params.person),
    fixture: fixtureIn(tongue, setting, params.fixture),
    product: product === undefined ? nouns.thing.one : labels.products[product],
    surface:
      params.surface === undefined
        ? the(grammar, nouns.surface)
        : surfacePhrase(tongue, setting, params.surface),
    hand: side === undefined ? the(grammar, nouns.places.hand) : placePhrase(tongue, `hand.${side}`),
    action: action && labels.actions[action],
  });
}

function layeringWords(tongue: Tongue, params: Finding['params']): WrongAndMend {
  const what = oneOf(['never-put-on', 'never-taken-off', 'other-way-round'] as const, params.what) ?? 'other';
  return tongue.problems.layering[what](itemIn(tongue, params.item), itemIn(tongue, params.by));
}

const classIn = (code: string): string => code.slice(code.indexOf('.') + 1);

function impossible(tongue: Tongue, setting: Setting, { code, params, steps }: Finding): Explained {
  const problem = oneOf(PROBLEM_CODES, classIn(code));
  const { wrong, mend } = problem
    ? problemWords(tongue, setting, { code: problem, params })
    : classIn(code) === 'not-worked-out'
      ? tongue.problems.notWorkedOut
      : layeringWords(tongue, params);
  const where = stepReference(tongue, setting, steps[0] ?? -1).text;
  const text = problem ? `${capital(where)}: ${wrong}` : capital(wrong);
  return { title: capital(wrong), text: `${text}. ${mend}` };
}

/** Other surfaces that are reached in the same way. */
function alsoOf(tongue: Tongue, setting: Setting, finding: Finding): string {
  const others = finding.surfaces.filter((id) => id !== finding.surface);
  if (others.length === 0) return '';
  const shown = others.slice(0, 3).map((id) => surfacePhrase(tongue, setting, id).text);
  const more = others.length - shown.length;
  const { also, moreSurfaces } = tongue.findings;
  return also(tongue.grammar.joined([...shown, ...(more > 0 ? [moreSurfaces(more)] : [])]));
}

/** Whether somebody standing by could see it. */
function seenOf({ findings }: Tongue, setting: Setting, key: string | undefined): string {
  const event = key === undefined ? undefined : readEvent(setting, key);
  if (!event) return '';
  const { visible, kind } = slipOf(event.what);
  if (kind === 'circumstance') return findings.seen.circumstance;
  return visible ? findings.seen.visible : findings.seen.hidden;
}

function toldOf(tongue: Tongue, setting: Setting, finding: Finding): Told {
  const { grammar, nouns, labels } = tongue;
  const clauses = finding.events.map((key) => eventSentence(tongue, setting, key));
  return {
    surface:
      finding.surface === undefined
        ? the(grammar, nouns.surface)
        : surfacePhrase(tongue, setting, finding.surface),
    where: stepReference(tongue, setting, finding.steps[0] ?? -1),
    events: grammar.joined(clauses),
    also: alsoOf(tongue, setting, finding),
    seen: seenOf(tongue, setting, finding.events[0]),
    why: labels.why[classIn(finding.code) as SurfaceClass] ?? '',
  };
}

/** Who and when, where it is not the wearer at the step itself. */
function asideOf(tongue: Tongue, setting: Setting, { params }: Finding): string {
  const { person } = params;
  const when = oneOf(['before', 'after'] as const, params.when);
  const parts = [
    ...(person === undefined || isWearer(setting, person)
      ? []
      : [personPhrase(tongue, setting, person).text]),
    ...(when ? [tongue.findings.when[when]] : []),
  ];
  return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}

function practice(tongue: Tongue, setting: Setting, finding: Finding): Explained {
  const [first = -1, ...others] = finding.steps;
  const where = stepReference(tongue, setting, first);
  const rule = ruleOf(finding.code);
  if (rule === undefined) return { title: finding.code, text: `${capital(where.text)}.` };
  const { title, text } = tongue.rules[rule];
  const { compare } = tongue.findings;
  const named = others.map((step) => stepReference(tongue, setting, step).text);
  const also = named.length > 0 ? compare(tongue.grammar.joined(named)) : '';
  return { title, text: tongue.findings.practice(where, asideOf(tongue, setting, finding), text, also) };
}

function variant(tongue: Tongue, setting: Setting, finding: Finding): Explained {
  const { before, after, unseen, to } = finding.params;
  const { where, surface } = toldOf(tongue, setting, finding);
  const step = setting.steps[finding.steps[0] ?? -1];
  return tongue.findings.variant({
    label: step ? stepLabel(tongue, setting, step) : where.text,
    where,
    target: to === undefined ? undefined : Number(to) + 1,
    surface,
    before: barrierWords(tongue, barriersGiven(before)),
    after: barrierWords(tongue, barriersGiven(after)),
    unseen: unseen === 'yes',
  });
}

function coverage(tongue: Tongue, setting: Setting, finding: Finding): Explained {
  const { person = '', item, declared } = finding.params;
  const who = personPhrase(tongue, setting, person);
  const { leftOn, leftOpen, bare } = tongue.findings;
  if (finding.code === 'coverage.left-on') return leftOn(itemIn(tongue, item, undefined, who), who);
  if (finding.code === 'coverage.left-open') return leftOpen(itemIn(tongue, item, undefined, who), who);
  return bare(toldOf(tongue, setting, finding).surface, who, declared === 'yes');
}

const SAY: Readonly<Record<FindingKind, (tongue: Tongue, setting: Setting, finding: Finding) => Explained>> =
  {
    impossible,
    open: (tongue, setting, finding) => tongue.findings.open(toldOf(tongue, setting, finding)),
    accepted: (tongue, setting, finding) => tongue.findings.byDesign(toldOf(tongue, setting, finding)),
    'one-slip': (tongue, setting, finding) =>
      tongue.findings.oneSlip({
        ...toldOf(tongue, setting, finding),
        clauses: tongue.grammar.joined(finding.events.map((key) => eventClause(tongue, setting, key))),
      }),
    practice,
    variant,
    coverage,
    acceptance: (tongue, setting, finding) =>
      acceptanceSaid(
        tongue.findings.acceptance,
        setting,
        finding,
        (one) => findingWords(tongue, setting, one).title,
        (index) => stepReference(tongue, setting, index).text,
      ),
  };

export function findingWords(tongue: Tongue, setting: Setting, finding: Finding): Explained {
  const { title, text } = SAY[finding.kind](tongue, setting, finding);
  const { accepted } = finding;
  const more = accepted
    ? tongue.findings.accepted(accepted.by, accepted.date, accepted.review, accepted.reason)
    : '';
  return { title, text: `${text.trim()}${more}` };
}
