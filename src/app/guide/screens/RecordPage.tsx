// The record of one exit, to be read and to be taken along as text.
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { screenOf, type State } from '../../../guide/index.ts';
import { useBook } from '../../journal/useBook.ts';
import { roomName } from '../../logbook/model.ts';
import { Tick } from '../../parts/Choices.tsx';
import { momentText, secondText } from '../../parts/moment.ts';
import { useTitle } from '../../parts/useTitle.ts';
import { words } from '../../words.ts';
import type { ExitHead, Recorded } from '../log/exits.ts';
import { recordLines, recordText } from '../log/record.ts';
import { headOfExit, recordedOf, replayed } from '../shell/rooms.ts';

interface Found {
  readonly head: ExitHead;
  readonly entries: readonly Recorded[];
  readonly state: State;
}

async function found(exit: string): Promise<Found | undefined> {
  const head = await headOfExit(exit);
  const state = await replayed(exit);
  if (!head || typeof state === 'string') return undefined;
  return { head, entries: await recordedOf(head), state };
}

function useRecord(exit: string): Found | 'looking' | undefined {
  const [record, setRecord] = useState<Found | 'looking' | undefined>('looking');
  useEffect(() => {
    let current = true;
    found(exit).then(
      (one) => current && setRecord(one),
      () => current && setRecord(undefined),
    );
    return () => {
      current = false;
    };
  }, [exit]);
  return record;
}

function save(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: 'text/plain' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}

function Record({ found: { head, entries, state } }: { readonly found: Found }) {
  const { staff } = useBook();
  const [answers, setAnswers] = useState(false);
  const reader = { script: state.core.script, words, staff, answers };
  const lines = recordLines(reader, entries);
  const { outcome } = screenOf(state);
  const said = outcome === undefined ? 'Not ended yet.' : `${words.guide.outcomes[outcome]}.`;
  const out = lines.filter(({ stands }) => stands);
  const entered = state.core.entered;
  return (
    <>
      <p>
        {state.core.script.setup.procedure.title}, version {head.version}; {roomName(head.room)};{' '}
        {momentText(head.at)} <code className="quiet">{head.exit}</code>
      </p>
      <p className="lead">
        {head.drill && <b className="badge">DRILL</b>} <b>{said}</b> This says what was seen and recorded,
        nothing more.
      </p>
      <p className="actions">
        <button
          type="button"
          className="button main"
          onClick={() => save(`${head.exit}.txt`, recordText({ head, outcome: said, lines }, reader))}
        >
          Save as text
        </button>
        {entered !== null && state.core.ended && (
          <Link className="button" href={`/guide?after=${head.exit}`}>
            Begin the doffing of this wearer
          </Link>
        )}
        {outcome === undefined && (
          <Link className="button" href={`/guide/${head.exit}`}>
            Go on where it stands
          </Link>
        )}
      </p>
      <Tick on={answers} set={setAnswers}>
        With what the wearer answered at the end: health data, told to observers, the lead and occupational
        health
      </Tick>
      <h2>What stands out</h2>
      <ul>
        {out.map(({ at, text }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a record is never reordered, and two lines of it may say the same
          <li key={`${index}-${at}`}>{text}</li>
        ))}
        {out.length === 0 && <li>{words.guide.outcomes['no-deviation-seen']}</li>}
      </ul>
      <h2>Everything, in its order</h2>
      <ol className="g-record">
        {lines.map(({ at, text }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: as above
          <li key={`${index}-${at}`}>
            <time dateTime={at}>{secondText(at)}</time> {text}
          </li>
        ))}
      </ol>
    </>
  );
}

export function RecordPage({ exit }: { readonly exit: string }) {
  const record = useRecord(exit);
  useTitle('Record');
  return (
    <div className="narrow">
      <h1>
        {record && record !== 'looking' && record.head.drill ? 'Record of a drill' : 'Record of an exit'}
      </h1>
      {record === 'looking' && <output>Reading the journal …</output>}
      {record === undefined && <p role="alert">It cannot be read in this browser.</p>}
      {record && record !== 'looking' && <Record found={record} />}
    </div>
  );
}
