// Findings in English: a heading, and what, where and why it matters. A record over the kinds of finding; the trade's
// own rules speak through their evidence record.
import type { Finding, FindingKind } from '../../check/finding.ts';
import { PROBLEM_CODES, type ProblemCode } from '../../contacts/problem.ts';
import type { SurfaceClass } from '../../contacts/plan.ts';
import { evidence } from '../../evidence/index.ts';
import { slipOf } from '../../domain/slips.ts';
import { type AcceptanceTable, type AcceptanceTold, acceptanceSaid } from '../accepted.ts';
import { readEvent } from '../events.ts';
import { ruleOf } from '../figures.ts';
import { barriersGiven, isWearer } from '../given.ts';
import type { Explained, Setting } from '../words.ts';
import { evidenceWords } from './evidence.ts';
import { barrierWords, counted } from './numbers.ts';
import { joined, personPhrase, surfacePhrase } from './phrases.ts';
import { capital } from '../capital.ts';
import { WHY } from './kinds.ts';
import { itemIn, layeringWords, NOT_WORKED_OUT, problemWords } from './problems.ts';
import { eventClause, eventSentence } from './slips.ts';
import { stepLabel, stepReference } from './steps.ts';

/** What each finding speaks of. */
interface Told {
  readonly finding: Finding;
  readonly setting: Setting;
  readonly surface: string;
  readonly why: string;
  /** 'step 9 (remove the outer gloves)' */
  readonly where: string;
  readonly events: string;
}

type Say = (told: Told) => Explained;

const classIn = (code: string): string => code.slice(code.indexOf('.') + 1);
const whyOf = ({ code, kind }: Finding): string =>
  ['open', 'one-slip', 'accepted'].includes(kind) ? (WHY[classIn(code) as SurfaceClass] ?? '') : '';

const isProblem = (code: string): code is ProblemCode => (PROBLEM_CODES as readonly string[]).includes(code);

const impossible: Say = ({ finding, setting, where }) => {
  const code = classIn(finding.code);
  const { wrong, mend } = isProblem(code)
    ? problemWords(setting, code, finding.params)
    : code === 'not-worked-out'
      ? NOT_WORKED_OUT
      : layeringWords(finding.params);
  const place = isProblem(code) ? `${capital(where)}: ` : '';
  return { title: capital(wrong), text: `${place}${place ? wrong : capital(wrong)}. ${mend}` };
};

/** Other surfaces that are reached in the same way. */
function also({ finding, setting }: Told): string {
  const others = finding.surfaces.filter((id) => id !== finding.surface);
  if (others.length === 0) return '';
  const shown = others.slice(0, 3).map((id) => surfacePhrase(setting, id).text);
  const more = others.length - shown.length;
  return ` It also reaches ${joined([...shown, ...(more > 0 ? [counted(more, 'other surface')] : [])])}.`;
}

const open: Say = (told) => ({
  title: `Open route to ${told.surface}`,
  text: `${capital(told.surface)} may be contaminated at ${told.where} though nobody slips.${also(told)} ${told.why}`,
});

const byDesign: Say = ({ surface, where, why }) => ({
  title: `${capital(surface)}: contaminated by design`,
  text: `From ${where} on the procedure takes ${surface} as contaminated though nobody slips, and must deal with it. ${why}`,
});

/** Whether somebody standing by could see it. */
function seen(setting: Setting, key: string | undefined): string {
  const event = key === undefined ? undefined : readEvent(setting, key);
  if (!event) return '';
  const { visible, kind } = slipOf(event.what);
  if (kind === 'circumstance') return ' Nobody has to slip for it, and nobody can see it happen.';
  return visible ? ' An observer could see it happen.' : ' An observer could not see it happen.';
}

const oneSlip: Say = (told) => {
  const { finding, setting, surface, why, events } = told;
  return {
    title: `One slip away: ${surface} (${joined(finding.events.map((key) => eventClause(setting, key)))})`,
    text: `It takes only this: ${events}. Then ${surface} may be contaminated.${also(told)}${seen(setting, finding.events[0])} ${why}`,
  };
};

/** Who and when, where it is not the wearer at the step itself. */
function aside({ finding, setting }: Told): string {
  const { person, when } = finding.params;
  const parts = [
    ...(person === undefined || isWearer(setting, person) ? [] : [personPhrase(setting, person)]),
    ...(when === 'before' || when === 'after' ? [`${when} it`] : []),
  ];
  return parts.length > 0 ? ` (${parts.join(', ')})` : '';
}

const practice: Say = (told) => {
  const { finding, setting, where } = told;
  const [, ...others] = finding.steps;
  const id = ruleOf(finding.code);
  if (id === undefined) return { title: finding.code, text: `${capital(where)}.` };
  const compare =
    others.length > 0 ? ` Compare ${joined(others.map((step) => stepReference(setting, step)))}.` : '';
  return {
    title: evidence(id).says.replace(/\.$/, ''),
    text: `${capital(where)} departs from this practice${aside(told)}: ${evidenceWords(id).says}${compare}`,
  };
};

const variant: Say = ({ finding, setting, surface, where }) => {
  const { before, after, unseen, to } = finding.params;
  const target = Number(to);
  const what =
    to === undefined ? 'left out' : `done ${target === 0 ? 'first' : `as step ${target + 1}`} instead`;
  const step = setting.steps[finding.steps[0] ?? -1];
  const change = `the barriers before ${surface} go from ${barrierWords(barriersGiven(before))} to ${barrierWords(barriersGiven(after))}`;
  const notice = unseen === 'yes' ? ' Nothing later in the procedure would show it.' : '';
  return {
    title: `${capital(step ? stepLabel(setting, step) : where)}: worse if ${what}`,
    text: `If ${where} is ${what}, ${change}.${notice}`,
  };
};

const LEFT: Readonly<Record<string, { readonly title: string; readonly text: string }>> = {
  'coverage.left-on': {
    title: 'still on at the end',
    text: 'is still worn when the procedure ends, and no step takes it off',
  },
  'coverage.left-open': {
    title: 'left open',
    text: 'is put on and no step closes it before the patient is faced',
  },
};

const coverage: Say = (told) => {
  const { finding, setting, surface } = told;
  const left = LEFT[finding.code];
  if (left) {
    const who = personPhrase(setting, finding.params.person ?? '');
    const { text: item, many } = itemIn(finding.params.item);
    const text = many ? left.text.replace(/\bis\b/g, 'are').replace(/\bit\b/g, 'them') : left.text;
    return {
      title: `${capital(item)} of ${who}: ${left.title}`,
      text: `${capital(item)} of ${who} ${text}.`,
    };
  }
  const person = finding.params.person ?? '';
  const meant = finding.params.declared === 'yes' ? ' The procedure says that this is on purpose.' : '';
  return {
    title: `${capital(surface)}: not covered`,
    text: `Nothing that ${personPhrase(setting, person)} wears covers ${surface} while facing the patient.${meant}`,
  };
};

const entryOf = ({ entry, where, by, date }: AcceptanceTold): string =>
  `Entry ${entry} of what is accepted in writing, ${where === '' ? '' : `for ${where}, `}by ${by} on ${date},`;

const ACCEPTANCES: AcceptanceTable = {
  unmatched: (told) => ({
    title: `Accepted in writing, but not found: ${told.what}`,
    text: `${entryOf(told)} is about nothing that this check finds: it may be needed no more, or be meant for another step or surface. Take it out, or write where it holds.`,
  }),
  void: (told) => ({
    title: `Cannot be accepted in writing: ${told.what}`,
    text: `${entryOf(told)} accepts nothing: only a departure from published practice, a place left bare, or an item left on or open can be accepted. Mend what it is about, and take it out.`,
  }),
  overdue: (told) => ({
    title: `Accepted in writing, but its day of review has passed: ${told.what}`,
    text: `${entryOf(told)} was to be looked at again on ${told.review}. A version with it is not sent for review and not approved before it is accepted anew, by a role and with a new day of review, or the step is mended.`,
  }),
};

const acceptance: Say = ({ finding, setting }) =>
  acceptanceSaid(
    ACCEPTANCES,
    setting,
    finding,
    (one) => findingWords(setting, one).title,
    (index) => stepReference(setting, index),
  );

const SAY: Readonly<Record<FindingKind, Say>> = {
  impossible,
  open,
  accepted: byDesign,
  'one-slip': oneSlip,
  practice,
  variant,
  coverage,
  acceptance,
};

/** The acceptance, where there is one. */
function acceptedSentence({ accepted }: Finding): string {
  if (!accepted) return '';
  const { reason, by, date, review } = accepted;
  return ` Accepted in writing by ${by} on ${date}, to be reviewed on ${review}: ${reason}`;
}

export function findingWords(setting: Setting, finding: Finding): Explained {
  const [first = -1] = finding.steps;
  const said = SAY[finding.kind]({
    finding,
    setting,
    surface: finding.surface === undefined ? 'this surface' : surfacePhrase(setting, finding.surface).text,
    why: whyOf(finding),
    where: stepReference(setting, first),
    events: joined(finding.events.map((key) => eventSentence(setting, key))),
  });
  return { title: said.title, text: `${said.text.trim()}${acceptedSentence(finding)}` };
}
