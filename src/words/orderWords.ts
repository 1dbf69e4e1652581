// The words of the order search put together: what each sentence speaks of is found here, in the same way for every
// language; how it is said stands in the language's table.
import type { Measure } from '../check/finding.ts';
import type { Problem } from '../contacts/problem.ts';
import type { Role, Step } from '../domain/procedure.ts';
import { TECHNIQUE_IDS, type TechniqueId } from '../domain/techniques/index.ts';
import type { EvidenceStatus, PracticeRuleId } from '../evidence/index.ts';
import type { Choice, Difference, FigureName } from '../order/index.ts';
import type { StepChange } from '../order/changes.ts';
import type { Rewriting } from '../order/substitute.ts';
import { CHANCE_STATUS } from './events.ts';
import { type Figure, figureNamed, figuresOf, isEstimate, type PairWriter, ruleOf } from './figures.ts';
import { isWearer, oneOf } from './given.ts';
import type { Pair } from './numbers.ts';
import type { FigureWords, OrderWords, ProofToSay, Refusal } from './order.ts';
import type { Setting } from './setting.ts';
import { capital } from './capital.ts';

/** What a language writes down for it: whole sentences, or parts that follow one another as they stand. */
export interface OrderTable {
  /** A figure inside a sentence, after its name in lists: 'the chance of reaching skin'. */
  readonly figure: (is: Figure['is'], name: string) => string;
  /** '1 percentage point', '0.1 percentage points'. */
  readonly points: (size: string) => string;
  /** Of two figures that read alike, with no sentence around it: 'lower by less than 0.1 percentage points'. */
  readonly slight: (within: string, rises: boolean) => string;
  /** Name, both values, what they rest on in brackets. Only chances and times come with what they differ by less than. */
  readonly difference: (name: string, pair: Pair, rests: string, rises: boolean) => string;
  /** What was chosen: the beginning of a sentence. Steps as `stepLabel` names them. */
  readonly chosen: {
    readonly order: (step: string, next: string) => string;
    readonly technique: (step: string) => string;
    readonly helper: (step: string, helped: string) => string;
    readonly hygiene: (step: string) => string;
    /** A step that is named like the one before it, with its number. */
    readonly numbered: (step: string, number: number) => string;
  };
  /** The alternative, which the reason goes on with. */
  readonly other: {
    readonly order: string;
    readonly technique: (way: string) => string;
    readonly helper: string;
    readonly hygiene: string;
  };
  /** The end of the sentence, with the sign before it and its full stop. */
  readonly reason: {
    readonly worse: (other: string, difference: string) => string;
    readonly impossible: (other: string, wrong: string) => string;
    readonly departs: (other: string, rule: string) => string;
    readonly same: (other: string) => string;
    readonly better: (other: string, difference: string) => string;
  };
  readonly tried: (tried: number, scenes: number) => string;
  readonly proved: (kept: boolean, tried: string) => string;
  readonly notProved: (kept: boolean, name: string, pair: Pair, rests: string, tried: string) => string;
  readonly rewritings: Readonly<Record<Rewriting, string>>;
  readonly kept: string;
  readonly lost: string;
  readonly changes: Readonly<Record<StepChange, (now: string, was: string) => string>>;
  readonly learns: (person: string, count: number, role: Role) => string;
  readonly refusals: Readonly<Record<Refusal, string>>;
}

/** What the table leans on. */
export interface OrderGround {
  readonly figureName: (figure: Figure) => string;
  readonly write: PairWriter;
  readonly status: (status: EvidenceStatus) => string;
  readonly label: (setting: Setting, step: Step) => string;
  readonly sentence: (setting: Setting, step: Step) => string;
  readonly person: (setting: Setting, id: string) => string;
  /** ', helped by the assistant'. */
  readonly helped: (setting: Setting, helper: string) => string;
  /** How a technique is done. */
  readonly how: (technique: TechniqueId) => string;
  readonly problem: (setting: Setting, problem: Problem) => string;
  /** A rule of practice in a few words. */
  readonly rule: (rule: PracticeRuleId) => string;
}

type Tools = OrderTable & OrderGround;

const rests = ({ status }: Tools, figure: Figure): string =>
  isEstimate(figure) ? ` (${status(CHANCE_STATUS)})` : '';

const inSentence = ({ figure: say, figureName }: Tools, figure: Figure): string =>
  say(figure.is, figureName(figure));

function differenceWords(tools: Tools, { figure: name, from, to }: Difference): string {
  const figure = figureNamed(name, from);
  const pair = tools.write(figure, to);
  return tools.difference(inSentence(tools, figure), pair, rests(tools, figure), to > from);
}

/** Chances closer than this are the same, as where measures are compared. */
const SAME = 1e-9;

const nameOf = (figure: Figure): FigureName =>
  'group' in figure ? `${figure.is}.${figure.group}` : figure.is;

function figureWords(tools: Tools, before: Measure, after: Measure): readonly FigureWords[] {
  const now = figuresOf(after);
  return figuresOf(before).map((figure, at): FigureWords => {
    const to = now[at]?.value ?? figure.value;
    const by = Math.abs(to - figure.value) <= (figure.is === 'chance' ? SAME : 0) ? 0 : to - figure.value;
    const [from, then, within] = tools.write(figure, by === 0 ? figure.value : to);
    return {
      figure: nameOf(figure),
      name: tools.figureName(figure),
      before: from,
      after: then,
      turn: by === 0 ? 'same' : by < 0 ? 'better' : 'worse',
      ...(within === undefined ? {} : { slight: tools.slight(within, by > 0) }),
      ...(isEstimate(figure) ? { status: CHANCE_STATUS } : {}),
    };
  });
}

const stepOf = ({ steps }: Setting, id: string): Step | undefined => steps.find((one) => one.id === id);

/** The step that would go first, with its doer where that is somebody else, its number where only that tells them apart. */
function nextWords(tools: Tools, setting: Setting, id: string, own: Step | undefined): string {
  const step = stepOf(setting, id);
  if (!step) return id;
  const label = tools.label(setting, step);
  if (step.who !== own?.who) return `${label} (${tools.person(setting, step.who)})`;
  return own && tools.label(setting, own) === label
    ? tools.chosen.numbered(label, setting.steps.indexOf(step) + 1)
    : label;
}

function chosenWords(tools: Tools, setting: Setting, { kind, step: id, instead }: Choice): string {
  const { chosen } = tools;
  const step = stepOf(setting, id);
  const own = capital(step ? tools.label(setting, step) : id);
  if (kind === 'order') return chosen.order(own, nextWords(tools, setting, instead, step));
  if (kind === 'hygiene') return chosen.hygiene(own);
  if (kind === 'technique') return chosen.technique(own);
  return chosen.helper(own, step?.helper === undefined ? '' : tools.helped(setting, step.helper));
}

function otherWords({ other, how }: Tools, { kind, instead }: Choice): string {
  const technique = oneOf(TECHNIQUE_IDS, instead);
  if (kind === 'technique') return other.technique((technique && how(technique)) || instead);
  return other[kind];
}

function ruleWords({ rule: say }: Tools, id: string): string {
  const rule = ruleOf(id);
  return rule ? say(rule) : id;
}

function reasonWords(tools: Tools, setting: Setting, choice: Choice): string {
  const { reason } = tools;
  const { outcome, difference, problem, rule = '' } = choice;
  const other = otherWords(tools, choice);
  if (outcome === 'impossible' && problem) return reason.impossible(other, tools.problem(setting, problem));
  if (outcome === 'departs') return reason.departs(other, ruleWords(tools, rule));
  if (outcome === 'same' || !difference) return reason.same(other);
  return reason[outcome === 'better' ? 'better' : 'worse'](other, differenceWords(tools, difference));
}

function proofWords(tools: Tools, { proved, gap, kept, explored }: ProofToSay): string {
  const tried = tools.tried(explored.tried, explored.scenes);
  if (proved || !gap) return tools.proved(kept, tried);
  const figure = figureNamed(gap.figure, gap.from);
  const pair = tools.write(figure, gap.to);
  return tools.notProved(kept, inSentence(tools, figure), pair, rests(tools, figure), tried);
}

/** The wearer goes without saying. */
function told({ sentence, person }: Tools, setting: Setting, step: Step): string {
  const said = sentence(setting, step);
  return isWearer(setting, step.who) ? said : `${capital(person(setting, step.who))}: ${said}`;
}

/** The words of a language; every sentence leaves through `set`. */
export function orderWords(table: OrderTable, ground: OrderGround, set = (text: string) => text): OrderWords {
  const tools: Tools = { ...table, ...ground };
  return {
    difference: (difference) => set(differenceWords(tools, difference)),
    figures: (before, after) =>
      figureWords(tools, before, after).map((one) => ({
        ...one,
        name: set(one.name),
        ...(one.slight === undefined ? {} : { slight: set(one.slight) }),
      })),
    choice: (setting, choice) =>
      set(`${chosenWords(tools, setting, choice)}${reasonWords(tools, setting, choice)}`),
    proof: (result) => set(proofWords(tools, result)),
    rewriting: (rewriting) => set(table.rewritings[rewriting]),
    kept: (kept) => set(kept ? table.kept : table.lost),
    change: (before, after, { what, step, was }) =>
      set(
        table.changes[what](
          told(tools, what === 'gone' ? before : after, step),
          was ? told(tools, before, was) : '',
        ),
      ),
    retraining: (setting, { person, role, changes }) =>
      set(table.learns(capital(ground.person(setting, person)), changes.length, role)),
    refusal: (why) => set(table.refusals[why]),
  };
}
