// docs/guide.md, made from the tables it speaks of, so that it cannot say anything else than the program does.
import { actionEvidence, EMERGENCIES, type Emergency } from '../../src/domain/emergencies.ts';
import { DEVIATIONS, EARLY_REASONS, QUESTIONS } from '../../src/domain/guiding.ts';
import { PRODUCT_IDS } from '../../src/domain/products.ts';
import {
  evidence,
  evidenceField,
  type EvidenceId,
  evidenceNumber,
  source,
} from '../../src/evidence/index.ts';
import { capitalHeight } from '../../src/guide/index.ts';
import { timersAt, type TimerSpec } from '../../src/guide/timers.ts';
import { wordsFor } from '../../src/words/index.ts';
import { procedure, step } from '../support/procedure.ts';
import { setupOf, SMALL } from './support.ts';

const words = wordsFor('en');
const { guide } = words;

function cited(id: EvidenceId): string {
  const record = evidence(id);
  if (record.source.id.startsWith('own-')) return `_${record.status}_, \`${id}\``;
  const { title, year } = source(record.source.id);
  return `${title}${year === null ? '' : ` (${year})`}, _${record.status}_, \`${id}\``;
}

const row = (...cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
const table = (head: readonly string[], rows: readonly string[]): string =>
  [row(...head), row(...head.map(() => '---')), ...rows].join('\n');

function timerRow(what: string, spec: TimerSpec | undefined): readonly string[] {
  return spec?.evidence === undefined
    ? []
    : [row(what, guide.timers[spec.kind], `${spec.seconds} s`, cited(spec.evidence))];
}

/** Each product on hands and on a thing, as a step of its own. */
function timerRows(): readonly string[] {
  const before = SMALL.people;
  return PRODUCT_IDS.flatMap((product) => {
    const of = procedure({
      people: before,
      steps: [
        step('hands', 'sanitise', { product }),
        step('on', 'put-on', { items: ['gloves'] }),
        step('thing', 'wipe', { fixture: 'chair', product }),
      ],
    });
    const setup = setupOf(of);
    const [rub, dry] = timersAt(setup, 0);
    const [contact] = timersAt(setup, 2);
    const name = words.product(product);
    return [
      ...timerRow(`${name} on hands`, rub),
      ...(product === 'alcohol-hand-rub' ? timerRow(`${name} before a fresh glove`, dry) : []),
      ...timerRow(`${name} on things`, contact),
    ];
  });
}

function emergencySection(one: Emergency & { readonly id: keyof typeof guide.emergencies }): string {
  const rows = one.actions.map((action) => row(guide.actions[action], cited(actionEvidence(action))));
  const rinse = one.rinse
    ? `\n\nTimed: ${guide.timers.rinse.toLowerCase()}, ${evidenceNumber(one.rinse)} min (${cited(one.rinse)}).`
    : '';
  return `### ${guide.emergencies[one.id]}\n\n${table(['First actions', 'Where it comes from'], rows)}${rinse}`;
}

const list = (texts: readonly string[]): string => texts.map((text) => `- ${text}`).join('\n');

export function page(): string {
  const share = evidenceField('guide.holds', 'share');
  const most = evidenceField('guide.holds', 'most');
  return `# The guide

The guide reads a doffing or a donning aloud, one step after the other, and records what the observer says of each. It is a pure
function, \`next(state, event)\`, which gives the new state and what the shell has to do; it has no clock, no sound and no disk. It
supports and does not replace the unit's approved procedure, its exposure plan, national guidance and licensed judgement.
A record says 'no deviation seen', never that somebody or something is clean or safe.

This page is made from the program's tables by \`npx vitest run test/guide -u\`.

## How it is used

1. \`scriptOf(setup)\` makes a script from a procedure, the unit's screen, languages, product times and exposure plan.
2. \`begin(script, people, mode, occasion)\` begins a drill with any procedure, or an exit only with an approval of this very text
   that has not run out. A drill with a procedure that is not approved says so on every screen. The page warns beforehand where steps need
   an assistant and none is named, where the wearer stands in another exit that has not ended, with the way there, and where the version
   accepts in writing what was to be looked at again on a day that has passed; an exit for real begins with any of them only knowingly,
   which is recorded as a note of it.
3. \`next(state, event)\` takes presses and what else happens; \`screenOf(state)\` says what stands large and for whom, what can be
   pressed, which times run or are owed, and what is suspect.
4. \`replay(script, entries)\` rebuilds the exit from what was stored, exactly. Only what is volatile begins anew: entries on their
   way to the store, a running search, a hand-over that was not taken, the place on an emergency's card, a refusal.

## Lines

A step is read to whoever does it, action and object first; then the observer watches and answers: seen as read, not seen, or a
slip. Nothing goes on by itself. What is shown is at most two rows, with one clause in a row; a longer sentence
goes over several screens. Capitals are ${capitalHeight(2).toFixed(1)} mm high for a reader at 2 m and ${capitalHeight(3).toFixed(1)} mm at 3 m (${cited('legibility.capital-angle')});
how many characters then fit follows from the screen's size (${cited('legibility.typeface')}; ${cited('legibility.screen')}). Where the text does
not fit, the script says so. The observer's own screen shows each line as large as goes in beside the picture of its step, measured on
the screen itself; where that is less than the distance asks for, it says how high the capitals are and from how far they are read.
A screen that nobody measured is taken to have ${evidenceNumber('legibility.unmeasured-screen')} pixels an inch (${cited('legibility.unmeasured-screen')}).

Holds: after the steps whose slips together carry ${share * 100} % of the chance that anything protected is reached, at most ${most} of them, everybody
stands still until the observer reads on; before such a step whoever does it says it back. The chance is the check's own importance
(Fussell-Vesely) over all protected surfaces; how many steps get a hold is judgement (${cited('guide.holds')}).

Hand signals stand beside the words where somebody wears a powered respirator (${cited('observer.speech-loss')}; ${cited('guide.signals')}):

${list(Object.values(guide.signals).map(({ shows, says }) => `${says}: ${shows.toLowerCase()}.`))}

## Stop

Anybody stops; only the observer resumes (${cited('guide.stop')}). Reading goes on from the last line that was answered, read again, and then
from the first line of the step that was not (${cited('guide.resume')}). Times run on, because wet stays wet.

## Times

A time is started when the observer sees the wetting or the rub begin, and the step is not answered before it is up. Going on
before that needs a reason (${EARLY_REASONS.map((reason) => guide.early[reason].toLowerCase()).join('; ')}), and is recorded as the step's own slip: too short a contact, or
hand hygiene that missed a spot (${cited('guide.short-rub')}). The unit's own times go before these: what somebody
wrote down from a label, with who and when, as an entry of the journal; the screen shows which label it was:

${table(['What', 'Timer', 'Time', 'Where it comes from'], timerRows())}

The limit of time in the suit is the unit's (${cited('wear.no-limit')}). It warns ${evidenceNumber('guide.wear-warning')} minutes before, unless the unit says
otherwise (${cited('guide.wear-warning')}).

## When something goes wrong

Each step offers its own slips, those that an observer sees first, and what may come to light of the things it handles. Everything else is a
category: ${DEVIATIONS.map((id) => guide.deviations[id].toLowerCase()).join('; ')}; with the places that the observer saw touched.

What was recorded is put into the check's own conditions: a recorded slip is true, a visible slip of a step that was seen done as
read is false, everything else stays open. A surface that nothing but what was recorded makes contaminated is shown as such; one that it takes
more for is shown with how many unseen slips or circumstances it would take. What a deviation without a place touched is not known, and
the screen says how many of those there are. The picture beside the line shows the plan until something is recorded, and then what was recorded;
nobody's seeing makes less of it. A key says what its patterns mean and which of the two it shows. The second displays of wearer and assistant
show the same picture with the same key: they are told only where the exit is worse than the plan. All that a slip means, and another way on, stands beside
the line or under it in a part that scrolls by itself; the line, its picture (which a phone has no room for), times and presses stay in sight.

Then the shell searches for another way on. It is offered with the number of slips and circumstances that it takes at least, as read and this way;
the observer takes it, or says why not. Taken, it replaces what lies ahead and nothing of what was done.
Where nothing better was found than the next step as written, or that could not be worked out, a notice over the line says so. The same
notice names what of the body may be contaminated and points to the exposure plan behind the button for emergencies: where skin, mucosa or the
clothes beneath are reached by what was recorded or with ${evidenceNumber('guide.exposure')} slip or circumstance more that nobody saw, and after a hand to the face or
a tear whose place nobody recorded (${cited('guide.exposure')}). It names the card, and stays until
one that fits was opened after that slip (eye, nose or mouth: its splash or touch; skin and clothes: theirs, or needle or cut; a tear
without a place: those, or a tear's own), over a hand-over too, else to the end; no other card ends it. That a touch is treated as a
splash would be is judgement. Once it was opened, 'no better way' is still said with the word that protected places may be contaminated.

The observer does not enter the room and gives no hands-on help (${cited('emergency.observer-out')}). Who goes in is named by the unit's plan.

## Emergencies

They open from everywhere, also out of a stop and after the end, and lead back to where one was. The unit's own plan and phone list stand first
(${cited('emergency.plan-first')}); what follows is for where the plan is silent. No drug is named.

${EMERGENCIES.map(emergencySection).join('\n\n')}

## The end

The wearer is asked: ${QUESTIONS.map(({ id }) => guide.questions[id]).join(' ')} A yes counts as a deviation. The exit then says one of: ${Object.values(guide.outcomes).join('; ')}.

A donning ends with the look all round. Where the coverage check finds a place bare, or the observer did not see, going in needs a reason and is
recorded.

## Storing

An entry is stored before the screen moves; until the store has said so, the screen shows that it is saving. A stop, an emergency and a time
that is up do not wait. Where the store fails (a full device), the line stays, the screen says why, and it is tried again by itself; one press
goes on unsaved, from then on without asking at each line, and what is not stored goes along with the next entry. Where the
store has not answered for two seconds (the house's own choice), the same press is offered and leaves it behind; before that it is not. Entries are those of the journal (\`exit.*\`, \`room.*\`,
\`emergency.opened\`, \`note.added\`), with ids of people, never names.

## One tab

One tab of a browser runs an exit. Another that opens it shows that, and offers to take over: the first saves what it has and stops. A
tab whose entries cannot be saved keeps the exit; one that is dead or asleep is taken over from after three seconds. Entries of a tab that
has lost its exit are refused before they are stored. The observer hands over only to somebody without another part in the exit.

## How it is held to that

Breadth-first over every abstracted state of a small doffing and a small donning, and random walks over every published doffing: something
always leads on, no line is answered twice, no running time is hidden, every state can be stopped and every emergency opened, and
the entries rebuild the exit. Suspect surfaces after random records equal the explicit-state reference engine's. Every published procedure, and every
emergency's card, fits a wall screen at 3 m and a desk screen at 2 m in all four languages.
`;
}
