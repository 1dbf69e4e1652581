// From the writing page to review: what the check found in exactly this draft, what stands in the way, as which version of
// which procedure, by whom and to whom. What is sent is the text of this moment; the draft may go on being written.
import { useMemo, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link, useLocation } from 'wouter';
import { hashOfText } from '../../journal/hash.ts';
import { freeSlug, nextVersion } from '../../versions/naming.ts';
import { type Hindrance, type HindranceCode, hindrances } from '../../versions/sending.ts';
import { memberText } from '../../versions/staff.ts';
import type { Checked } from '../compose/checked.ts';
import type { Editing } from '../compose/editing.ts';
import { textOf } from '../compose/model/draft.ts';
import { Select } from '../compose/parts.tsx';
import { Summary } from '../findings/Summary.tsx';
import { useBar } from '../journal/useBar.ts';
import { book, useBook } from '../journal/useBook.ts';
import { membersOf, NotListed, Who } from '../journal/Who.tsx';
import { limitsFor } from '../model/findings.ts';
import { Ticks } from '../parts/Choices.tsx';
import { Confirm } from '../parts/Confirm.tsx';
import { today } from '../today.ts';
import { fileIn } from './files.ts';
import { HINDERS, STAGE_NAMES } from './labels.ts';
import { lineageOf, setLineage } from './lineage.ts';
import { sending, versionNamed, versionPath, versionsOf } from './model.ts';
import { Opening } from './Opening.tsx';
import { Told } from './Told.tsx';

/** A draft is a file as well, and can be carried to the device that may send it. */
const ELSEWHERE = 'What you write here can be saved as a file, and sent from such a device.';

interface SendProps extends Editing {
  readonly id: string;
  readonly checked: Checked;
}

/** Where each is mended. */
function Ways({ id, code }: { readonly id: string; readonly code: HindranceCode }) {
  if (code === 'to-mend' || code === 'not-finished')
    return (
      <Link href={`/write/${id}/steps`} className="button">
        Go to the steps
      </Link>
    );
  if (code !== 'to-accept' && code !== 'review-past') return null;
  return (
    <span className="actions">
      <Link href={`/write/${id}/steps`} className="button">
        Mend in the steps
      </Link>
      <Link href={`/write/${id}/rules`} className="button">
        {code === 'to-accept' ? 'Accept in writing' : 'Accept anew'}
      </Link>
    </span>
  );
}

function Hinders({
  id,
  draft,
  all,
}: {
  readonly id: string;
  readonly draft: SendProps['draft'];
  readonly all: readonly Hindrance[];
}) {
  return (
    <div className="hinders">
      <h3>It cannot be sent yet</h3>
      <ul className="plain">
        {all.map((hindrance) => (
          <li key={hindrance.code} className="stated">
            <p>{HINDERS[hindrance.code]}</p>
            <Told file={draft} hindrance={hindrance} today={today()} />
            <Ways id={id} code={hindrance.code} />
          </li>
        ))}
      </ul>
    </div>
  );
}

/** Which procedure of the unit it becomes a version of. */
function useProcedure(id: string, title: string) {
  const state = useBook();
  const known = Object.keys(state.versions.procedures).toSorted();
  const [chosen, choose] = useState(() => lineageOf(id) ?? '');
  const own = freeSlug(title, new Set(known), `procedure-${id}`);
  const procedure = known.includes(chosen) ? chosen : own;
  const choices = known.map((value) => {
    const [last] = versionsOf(state, value);
    const name = (last && fileIn(state, last.version.content)?.title) ?? value;
    return { value, name: `${name} (${value})` };
  });
  return { procedure, choices, chosen: known.includes(chosen) ? chosen : '', choose };
}

function VersionName({
  draft,
  edit,
  procedure,
  taken,
}: Editing & { readonly procedure: string; readonly taken: boolean }) {
  const state = useBook();
  const names = new Set(versionsOf(state, procedure).map(({ version }) => version.version));
  const next = nextVersion(draft.version, names);
  const there = versionNamed(state, procedure, draft.version);
  return (
    <p>
      It will be <b>version {draft.version || '(no name)'}</b>.{' '}
      {there && !taken && (
        <span className="quiet">
          It takes the place of what is there under this name, which is{' '}
          {there.stage === 'draft' ? 'a draft' : STAGE_NAMES[there.stage]}.{' '}
        </span>
      )}
      {(taken || draft.version === '') && (
        <Button
          className="button"
          onPress={() => edit({ ...draft, version: next }, `Call it version ${next}`)}
        >
          Call it version {next}
        </Button>
      )}
    </p>
  );
}

interface PeopleProps {
  readonly by: string;
  readonly setBy: (person: string) => void;
  readonly to: ReadonlySet<string>;
  readonly setTo: (people: ReadonlySet<string>) => void;
}

/** Who sends it, and who is to review it: never the same. */
function People({ by, setBy, to, setTo }: PeopleProps) {
  const { is, staff } = useBook();
  const others = membersOf(staff).filter(({ person }) => person !== by);
  return (
    <>
      <div className="fields">
        <Who label="Who sends it" value={by} set={setBy} />
      </div>
      {others.length > 0 ? (
        <Ticks
          label="Who is to review it (somebody else)"
          values={others.map(({ person }) => person)}
          chosen={to}
          set={setTo}
          nameOf={(person) => memberText(staff, person)}
        />
      ) : (
        <p className="quiet">Whoever sends it cannot review it, and nobody else is in the staff list yet.</p>
      )}
      <NotListed open={is === 'ready' && Object.keys(staff).length < 2} />
    </>
  );
}

/** What the check found in exactly this draft; undefined before it has run to its end on it. */
function foundIn({ judged, complete, current, shown, choice }: Checked) {
  if (!current || !complete || !judged) return undefined;
  return { findings: shown.map(({ finding }) => finding), limits: limitsFor(judged.limits, choice) };
}

function useHindrances(draft: SendProps['draft'], checked: Checked, procedure: string) {
  const state = useBook();
  const text = useMemo(() => textOf(draft), [draft]);
  const found = foundIn(checked);
  const { title, version, accepted } = draft;
  const { current, complete, judged, diagnostics = [] } = checked;
  const unreadable = current && complete && !judged && diagnostics.length > 0;
  // Without steps no check ever runs: nobody is to wait for one.
  const broken = unreadable || draft.steps.length === 0;
  const toSend = { title, version, text, content: hashOfText(text), accepted, checked: found, broken };
  return { text, found, all: hindrances(toSend, versionNamed(state, procedure, version), today()) };
}

export function Send({ id, draft, edit, checked }: SendProps) {
  const { is, staff } = useBook();
  const [, go] = useLocation();
  const [by, setBy] = useState('');
  const [to, setTo] = useState<ReadonlySet<string>>(new Set());
  const { procedure, choices, chosen, choose } = useProcedure(id, draft.title);
  const { text, found, all } = useHindrances(draft, checked, procedure);
  const bar = useBar('procedure.sent-for-review');
  const people = membersOf(staff).flatMap(({ person }) => (to.has(person) && person !== by ? [person] : []));
  const nobody = people.length === 0 ? 'Choose who is to review it.' : undefined;
  const missing = by === '' ? 'Choose who sends it.' : nobody;
  const names = people.map((one) => memberText(staff, one)).join(' and ');
  const write = async (): Promise<void> => {
    const { version, accepted } = draft;
    await book.write(sending({ procedure, version, text, by, to: people, accepted, today: today() }));
    setLineage(id, procedure);
    go(versionPath(procedure, draft.version));
  };
  return (
    <section aria-labelledby="send-title" className="send">
      <h2 id="send-title">Send for review</h2>
      <p>
        Exactly this draft, as the check has seen it, goes into the journal of this device for somebody else
        to approve or send back. What you write afterwards is not in it.
      </p>
      {bar && (
        <p className="notice" role="note">
          {bar} {ELSEWHERE}
        </p>
      )}
      <Opening />
      {found && (
        <Summary
          shown={checked.shown}
          title="What the check found in exactly this draft"
          level={3}
          complete
          limits={found.limits}
        />
      )}
      {all.length > 0 && <Hinders id={id} draft={checked.judged?.procedure ?? draft} all={all} />}
      {choices.length > 0 && (
        <Select
          long
          label="A version of"
          value={chosen}
          none="a procedure of its own"
          choices={choices}
          set={choose}
        />
      )}
      <VersionName
        draft={draft}
        edit={edit}
        procedure={procedure}
        taken={all.some(({ code }) => code === 'version-taken')}
      />
      <People by={by} setBy={setBy} to={to} setTo={setTo} />
      <p className="actions">
        <Confirm
          label="Send for review …"
          title="Send for review"
          sentence={`The journal will say that ${memberText(staff, by)} sent version ${draft.version} of “${draft.title}” to ${names} for review.`}
          isDisabled={is !== 'ready' || all.length > 0 || missing !== undefined}
          bar={bar}
          write={write}
        />
        {!bar && (
          <output className="quiet">{all.length > 0 ? 'See above what stands in the way.' : missing}</output>
        )}
      </p>
    </section>
  );
}
