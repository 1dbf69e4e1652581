// What an exit is begun with. A drill may use any procedure; an exit only the approved version in force. People are initials
// of the staff list; the screen of the second display is measured, and whether the large text fits it is said at once.
import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { Mode, UnitSettings } from '../../../guide/index.ts';
import { readProcedure } from '../../../language/index.ts';
import { slugOf } from '../../../versions/naming.ts';
import type { StaffState } from '../../../versions/staff.ts';
import { book, useBook } from '../../journal/useBook.ts';
import { OneOf } from '../../parts/Choices.tsx';
import { StaysHere } from '../../sync/StaysHere.tsx';
import { today } from '../../today.ts';
import { words } from '../../words.ts';
import { keeper, replayed, startExit, type Started } from '../shell/rooms.ts';
import { type Choice, useChoices } from './choices.ts';
import { ScreenFit } from './ScreenFit.tsx';
import { Packs } from '../log/Packs.tsx';
import { unitTimes } from '../log/times.ts';
import { itemsOf, type ItemTyped } from '../../logbook/model.ts';
import { TIMES, WARNINGS } from './labels.ts';
import { useExits } from './useExits.ts';
import { type Warned, warningsOf } from './warned.ts';
import { Warnings } from './Warnings.tsx';
import { peopleFrom } from './people.ts';
import { type Filled, Who } from './Who.tsx';

const MODES = ['drill', 'exit'] as const;
type ModeName = (typeof MODES)[number];
const MODE_NAMES: Readonly<Record<ModeName, string>> = {
  drill: 'Drill: for practice, with any procedure',
  exit: 'Exit: for real, with an approved version',
};

const wrongText = (started: Started): string => {
  if ('bar' in started) return words.guide.bars[started.bar];
  if ('wrong' in started)
    return started.wrong === 'text'
      ? 'The procedure has errors: check it first.'
      : 'This browser keeps nothing: it would be lost in a crash, so it does not begin. Allow storage or free some room.';
  return '';
};

interface Asked {
  readonly filled: Filled;
  readonly staff: StaffState;
  readonly choice: Choice;
  readonly mode: ModeName;
  readonly unit: UnitSettings;
  readonly after: string | null;
  readonly packs: readonly ItemTyped[];
  readonly warnings: readonly Warned[];
  /** Notes of those that are gone on with. */
  readonly known: readonly string[];
}

/** For how long the wearer has been in the suit, by the donning that it was. */
async function suitSince(donning: string): Promise<{ readonly inSuit?: number }> {
  const state = await replayed(donning);
  const entered = typeof state === 'string' ? null : state.core.entered;
  return entered === null ? {} : { inSuit: Math.max(0, Math.round((Date.now() - entered) / 1000)) };
}

/** The exit that began, or why it did not, in words. */
async function begun(asked: Asked): Promise<{ readonly exit?: string; readonly wrong: string }> {
  const { filled, staff, choice, mode, unit, after, packs, warnings, known } = asked;
  const room = slugOf(filled.room);
  if (room === '') return { wrong: 'Say which room, in letters or numbers.' };
  if (mode === 'exit' && warnings.some(({ note }) => !known.includes(note)))
    return { wrong: WARNINGS.unanswered };
  const knowingly = mode === 'exit' ? warnings.map(({ warned, note }) => ({ warned, text: note })) : [];
  const people = await peopleFrom(filled, staff, words);
  if (typeof people === 'string') return { wrong: people };
  keeper.keepUnit(unit);
  const { text, fileName, approval } = choice;
  const how: Mode = { is: mode, ...(approval ? { approval } : {}) };
  const visit = after === null ? {} : { visit: after, ...(await suitSince(after)) };
  const { times, staff: listed } = book.state();
  const own = { ...unit, times: unitTimes(times, listed), packs: itemsOf(packs) };
  const started = await startExit({
    text,
    fileName,
    mode: how,
    unit: own,
    people,
    room,
    knowingly,
    ...visit,
  });
  return 'exit' in started ? { exit: started.exit, wrong: '' } : { wrong: wrongText(started) };
}

function PlanLine({ plan }: { readonly plan: UnitSettings['plan'] }) {
  return (
    <p>
      {plan ? (
        <>
          The unit’s plan: <b>{plan.title}</b>, {plan.phones.length} numbers.{' '}
        </>
      ) : (
        'The unit’s own exposure plan and phone list are not kept in this browser yet. '
      )}
      <Link href="/guide/unit">Plan, phones, limits</Link> <Link href="/guide/times">{TIMES.title}</Link>
    </p>
  );
}

/** Id of the reason why nothing can begin. */
const NONE = 'start-none';

/** Nothing to begin with for real: who approves, and the two ways there. */
function NoneApproved({ id }: { readonly id: string }) {
  return (
    <div role="alert" id={id} className="g-warned">
      <p>
        <b>
          No version is approved and in force in this browser’s journal: an exit cannot begin. Drills can.
        </b>{' '}
        An infection-prevention lead approves a version, on a device that is a lead’s; here it is in force
        once this device has that entry.
      </p>
      <p>
        <Link href="/versions">Versions: which wait for approval</Link>
      </p>
      <p>
        <Link href="/write">Write: a procedure to send for approval</Link>
      </p>
    </div>
  );
}

interface StartFormProps {
  readonly chosen: string | null;
  readonly after: string | null;
}

export function StartForm({ chosen, after }: StartFormProps) {
  const [, go] = useLocation();
  const { staff } = useBook();
  const [mode, setMode] = useState<ModeName>('drill');
  const choices = useChoices(mode);
  const [id, setId] = useState(chosen ?? '');
  const [unit, setUnit] = useState(keeper.unit);
  const [filled, fill] = useState<Filled>({ wearer: '', observer: '', assistant: '', room: '' });
  const [packs, setPacks] = useState<readonly ItemTyped[]>([]);
  const [known, setKnown] = useState<readonly string[]>([]);
  const [wrong, setWrong] = useState('');
  const [busy, setBusy] = useState(false);
  const choice = choices.find((one) => one.id === id) ?? choices[0];
  const exits = useExits() ?? [];
  const procedure = choice && readProcedure(choice.text, choice.fileName).procedure;
  const warnings = warningsOf({ ...filled, procedure, staff, exits, today: today(), words });
  const set = (part: Partial<Filled>): void => fill({ ...filled, ...part });

  const begin = async (): Promise<void> => {
    if (!choice) return;
    const done = await begun({ filled, staff, choice, mode, unit, after, packs, warnings, known });
    if (done.exit === undefined) setWrong(done.wrong);
    else go(`/guide/${done.exit}`);
  };
  const press = (): void => {
    if (busy || !choice) return;
    setBusy(true);
    begin()
      .catch((error: unknown) => setWrong(error instanceof Error ? error.message : String(error)))
      .finally(() => setBusy(false));
  };
  return (
    <form
      className="g-start"
      aria-labelledby="start-title"
      onSubmit={(event) => {
        event.preventDefault();
        press();
      }}
    >
      <h2 id="start-title">Begin</h2>
      <OneOf
        label="Drill or exit"
        values={MODES}
        chosen={mode}
        set={setMode}
        nameOf={(one) => MODE_NAMES[one]}
      />
      {choices.length === 0 && <NoneApproved id={NONE} />}
      <label className="g-field">
        Procedure
        <select value={choice?.id ?? ''} onChange={(event) => setId(event.currentTarget.value)}>
          {choices.map((one) => (
            <option key={one.id} value={one.id}>
              {one.name}
            </option>
          ))}
        </select>
      </label>
      <Who filled={filled} set={set} choice={choice} unit={unit} setUnit={setUnit} />
      <Warnings warnings={warnings} known={known} set={setKnown} asks={mode === 'exit'} />
      {choice && <Packs choice={choice} typed={packs} set={setPacks} />}
      <ScreenFit unit={unit} set={setUnit} />
      <PlanLine plan={unit.plan} />
      {wrong !== '' && (
        <p role="alert" className="wrong">
          {wrong}
        </p>
      )}
      <StaysHere />
      <button
        type="submit"
        className="button main g-begin"
        aria-disabled={!choice || busy}
        {...(choice ? {} : { 'aria-describedby': NONE })}
      >
        {mode === 'drill' ? 'Begin the drill' : 'Begin the exit'}
      </button>
    </form>
  );
}
