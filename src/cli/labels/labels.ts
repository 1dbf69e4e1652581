// What the command line itself says around a result, in every language. Sentences about the procedure come from words/;
// here are the headings and the few sentences that only a terminal needs. Complaints about files and options, and
// the help, are English.
import type { Language } from '../../words/index.ts';

type Counted = (count: number) => string;

export interface CliLabels {
  readonly language: Language;
  readonly errors: Counted;
  readonly notes: Counted;
  readonly steps: Counted;
  readonly version: (version: string) => string;
  readonly invented: string;
  readonly against: (agents: readonly string[]) => string;
  readonly reachable: (agent: string) => string;
  readonly barriers: string;
  readonly chance: string;
  readonly surface: string;
  readonly none: string;
  readonly others: (noRoute: string, count: number) => string;
  readonly more: string;
  readonly start: string;
  /** Of what is about no step but the file as a whole. */
  readonly file: string;
  readonly step: (number: number) => string;
  readonly accepted: string;
  readonly checkedAgainst: (agent: string) => string;
  readonly ownWording: string;
  readonly route: string;
  readonly mends: string;
  readonly noMend: string;
  readonly restsOn: string;
  readonly replay: string;
  readonly nobodySlips: string;
  readonly andAlso: string;
  readonly interval: (low: string, high: string) => string;
  readonly combinations: (count: string, orders: string) => string;
  readonly barriersNow: (any: string, atEnd: string) => string;
  readonly theRest: string;
  readonly routeOfFirst: string;
  readonly routeThough: string;
  readonly neverSuspect: string;
  readonly whenChanged: string;
  readonly notProtected: string;
  readonly about: string;
  readonly takenAtStart: (surfaces: string) => string;
  readonly stillAtEnd: string;
  readonly notAtEnd: string;
  readonly reached: string;
  readonly notReached: string;
  readonly nobody: string;
  readonly goesWrong: string;
  readonly searchedAgainst: (agent: string) => string;
  readonly orderFound: string;
  readonly orderStands: string;
  /** The given order, where no better one was found and none is ruled out. */
  readonly orderNotBettered: string;
  readonly givenAndFound: string;
  readonly beforeAndAfter: string;
  readonly departuresAdmitted: string;
  readonly whatChanges: string;
  readonly whoLearns: string;
  /** Who does it, before what is done. */
  readonly doer: (who: string, said: string) => string;
}
