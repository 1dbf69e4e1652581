// What stands around the line on the guide's screens: buttons, headings, questions and short remarks, in the language of whoever
// reads them. One table per language; a key that is missing does not compile. What has places to fill takes text, so that
// every sentence can be read as a pattern beside English.

/** The same of one and of several: languages differ in more than an ending. */
export interface Counted {
  readonly one: string;
  readonly more: (count: string) => string;
}

export const countedIn = ({ one, more }: Counted, count: number): string =>
  count === 1 ? one : more(String(count));

/** By their numbers, written out. */
interface Numbered {
  readonly one: (number: string) => string;
  readonly more: (numbers: string) => string;
}

export const numberedIn = ({ one, more }: Numbered, numbers: readonly number[]): string =>
  numbers.length === 1 ? one(String(numbers[0])) : more(numbers.join(', '));

/** Over and beside the line. */
interface LineLabels {
  readonly night: string;
  readonly voiceOff: string;
  readonly more: string;
  readonly allExits: string;
  readonly room: (name: string) => string;
  readonly step: (at: string, of: string) => string;
  readonly saved: string;
  /** Saved on this device; so many entries do not get to the unit's server. */
  readonly savedHere: (count: string) => string;
  /** A label before what it is the label of. */
  readonly colon: (label: string) => string;
  /** What is to be said, in quotation marks. */
  readonly spoken: (text: string) => string;
  readonly noVoice: string;
  readonly goesDark: string;
  readonly notices: string;
  readonly moreNotices: string;
  readonly whatIsOn: string;
  readonly moreBelow: string;
  readonly times: string;
  readonly line: string;
  readonly before: string;
  readonly beforeSays: string;
  readonly backToLineOn: string;
  readonly backToLine: string;
  readonly answer: string;
  readonly signals: string;
  readonly record: string;
  /** In the largest letters; the time of day. */
  readonly ended: (time: string) => string;
  /** The height of capitals here, from how far they are read, and from how far they should be. */
  readonly tooLow: (millimetres: string, metres: string, wanted: string) => string;
  readonly unmeasured: string;
}

/** What the observer does with the line; the places are names of those who act on it. */
interface DutyLabels {
  readonly stopped: string;
  readonly emergency: string;
  readonly again: (names: string) => string;
  readonly watch: (names: string) => string;
  readonly hold: string;
  readonly back: (names: string) => string;
  readonly ask: (names: string) => string;
  readonly own: string;
  readonly read: (names: string) => string;
}

/** What went wrong, and why something is done otherwise than as written. */
interface WrongLabels {
  readonly press: string;
  readonly title: string;
  readonly other: string;
  readonly touched: string;
  readonly notOne: string;
  readonly ownWords: string;
  readonly early: string;
  readonly reason: string;
  readonly decline: string;
  readonly declines: readonly string[];
  readonly bare: string;
  readonly goIn: string;
}

/** After a slip. */
interface SuspectLabels {
  readonly title: string;
  readonly after: string;
  readonly notWorkedOut: string;
  readonly unseen: Counted;
  readonly andMore: (count: string) => string;
  readonly none: string;
  readonly unplaced: string;
  /** A search found no way on that is better than the procedure's next step. */
  readonly nothingBetter: string;
  readonly notSought: string;
  /** Before either, where something of the body may be contaminated. */
  readonly protected: string;
  /** Places of the body, and where help is: the unit's plan, by the button of that name and the cards behind it. */
  readonly exposed: (places: string, button: string) => string;
  readonly everything: string;
  readonly alsoOthers: (places: string, count: string) => string;
}

/** Another way on. */
interface OfferLabels {
  readonly title: string;
  readonly heading: Counted;
  readonly changed: Counted;
  readonly unchanged: Counted;
  readonly what: Readonly<Record<'new' | 'moved' | 'left out', string>>;
  readonly behind: (label: string) => string;
  /** A step by its number, and several; `as`: by the number that they would have on the new way. */
  readonly step: Numbered;
  readonly as: Numbered;
}

interface HandoverLabels {
  readonly to: string;
  readonly other: string;
  readonly ask: string;
  readonly which: (name: string) => string;
  readonly noneYet: string;
  readonly initials: (role: string) => string;
  readonly shared: (initials: string) => string;
  readonly hasPart: (initials: string) => string;
  readonly twice: string;
}

/** To the patterns of the picture; what they are on is what is drawn. */
interface KeyLabels {
  readonly title: string;
  readonly contaminated: string;
  readonly nothing: string;
  /** Outlined. */
  readonly changed: string;
  /** Which state the picture shows. */
  readonly planned: string;
  readonly recorded: string;
}

/** The second displays. */
interface DisplayLabels {
  readonly wearer: string;
  readonly assistant: string;
  readonly openWearer: string;
  readonly openAssistant: string;
  readonly silent: string;
  readonly full: string;
  readonly waits: string;
}

/** What an approved version accepts past its day of review: told before an exit begins, and as it is recorded. */
interface OverdueLabels {
  readonly says: (what: string, since: string) => string;
  readonly note: (what: string, since: string) => string;
}

/** The exit cannot be read on here. */
interface OpeningLabels {
  readonly guide: string;
  readonly looking: string;
  readonly unknown: string;
  readonly notBegunHere: string;
  readonly otherLines: string;
  readonly elsewhere: string;
  readonly elsewhereSays: string;
  readonly unsaved: string;
  readonly take: string;
}

export interface GuideLabels {
  readonly line: LineLabels;
  readonly duty: DutyLabels;
  readonly wrong: WrongLabels;
  readonly suspects: SuspectLabels;
  readonly offer: OfferLabels;
  readonly handover: HandoverLabels;
  readonly key: KeyLabels;
  readonly display: DisplayLabels;
  readonly overdue: OverdueLabels;
  readonly opening: OpeningLabels;
  readonly coverage: { readonly title: string; readonly none: string };
  readonly suit: {
    readonly title: string;
    readonly since: (time: string) => string;
    readonly limit: (minutes: string) => string;
  };
  /** Beside the note's own name. */
  readonly breakOff: (note: string) => string;
  readonly told: string;
  readonly noPlan: string;
}
