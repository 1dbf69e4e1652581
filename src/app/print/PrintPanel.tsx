// Printing a procedure: which paper, on which sheets, in which language, typeset by the server where one answers; and this page
// as it stands, which needs none. The server is asked only once the panel is opened.
import { useCallback, useEffect, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { languageOf, LANGUAGES } from '../../words/index.ts';
import { DOCUMENT_KINDS, type DocumentKind, printWordsFor } from '../../words/print/index.ts';
import { book } from '../journal/useBook.ts';
import { LANGUAGE_NAMES } from '../languages/names.ts';
import { OneOf } from '../parts/Choices.tsx';
import { useSpoken } from '../words.ts';
import { OUTCOMES, PRINT, REACH, SIZES } from './labels.ts';
import {
  type Outcome,
  type PaperSize,
  type Printable,
  printed,
  type Reach,
  reachNow,
  usualSize,
  type Wanted,
} from './paper.ts';

const PAPER_SIZES = Object.keys(SIZES) as PaperSize[];
const NAMES = printWordsFor('en').document;

function Language({ wanted, set }: { readonly wanted: Wanted; readonly set: (wanted: Wanted) => void }) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{PRINT.language}</label>
      <select
        id={id}
        value={wanted.language}
        onChange={(event) => {
          const language = languageOf(event.target.value);
          if (language) set({ ...wanted, language });
        }}
      >
        {LANGUAGES.map((one) => (
          <option key={one} value={one} lang={one}>
            {LANGUAGE_NAMES[one].own}
          </option>
        ))}
      </select>
    </div>
  );
}

/** What became of it; errors with their places. */
function Told({ outcome }: { readonly outcome: Outcome | 'making' | undefined }) {
  if (outcome === undefined) return null;
  if (outcome === 'making') return <p>{PRINT.making}</p>;
  if (outcome.is === 'saved') return <p className="done">{PRINT.saved(outcome.name)}</p>;
  return (
    <>
      <p className="wrong">{OUTCOMES[outcome.is]}</p>
      {outcome.is === 'faults' && (
        <ul aria-label={PRINT.faults}>
          {outcome.faults.map(({ file, line, column, code, wrong, mend }) => (
            <li key={`${file}:${line}:${column}:${code}:${wrong}`}>
              <b>
                {PRINT.where[file]}, {PRINT.place(line, column)}:
              </b>{' '}
              {wrong} {mend}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

/** Whether the server can, asked as the panel opens, when the network comes or goes, and when somebody presses for it. */
function useReach(): readonly [Reach, () => void] {
  const [reach, setReach] = useState<Reach>('asking');
  const look = useCallback(() => {
    reachNow()
      .then(setReach)
      .catch(() => setReach('none'));
  }, []);
  useEffect(() => {
    look();
    window.addEventListener('online', look);
    window.addEventListener('offline', look);
    return () => {
      window.removeEventListener('online', look);
      window.removeEventListener('offline', look);
    };
  }, [look]);
  const again = (): void => {
    setReach('asking');
    look();
  };
  return [reach, again];
}

function Choices({ wanted, set }: { readonly wanted: Wanted; readonly set: (wanted: Wanted) => void }) {
  return (
    <>
      <OneOf<DocumentKind>
        label={PRINT.paper}
        values={DOCUMENT_KINDS}
        chosen={wanted.kind}
        set={(kind) => set({ ...wanted, kind })}
        nameOf={(kind) => NAMES[kind]}
      />
      <OneOf<PaperSize>
        label={PRINT.size}
        values={PAPER_SIZES}
        chosen={wanted.size}
        set={(size) => set({ ...wanted, size })}
        nameOf={(size) => SIZES[size]}
      />
      <Language wanted={wanted} set={set} />
    </>
  );
}

function Panel({ printable }: { readonly printable: () => Printable }) {
  const { language, overrides } = useSpoken();
  const [wanted, setWanted] = useState<Wanted>({ kind: 'chart', size: usualSize(), language });
  const [outcome, setOutcome] = useState<Outcome | 'making'>();
  const [reach, ask] = useReach();
  // The button can be pressed all the while, so that it keeps the focus: one paper is set at a time all the same.
  const press = async (): Promise<void> => {
    if (outcome === 'making') return;
    setOutcome('making');
    const done = await printed(printable(), wanted, overrides, book.state());
    setOutcome(done);
    if (done.is === 'lost') ask();
  };
  return (
    <>
      <p>{PRINT.about}</p>
      <Choices
        wanted={wanted}
        set={(next) => {
          setWanted(next);
          setOutcome(undefined);
        }}
      />
      <p className="actions">
        <Button
          className="button main"
          isDisabled={reach !== 'can'}
          onPress={() => {
            press().catch(() => setOutcome({ is: 'failed' }));
          }}
        >
          {PRINT.typeset}
        </Button>
        <Button className="button" onPress={() => window.print()}>
          {PRINT.plain}
        </Button>
        {reach !== 'can' && reach !== 'asking' && (
          <Button className="button" onPress={ask}>
            {PRINT.again}
          </Button>
        )}
      </p>
      <output className="print-told">
        {reach !== 'can' && <p>{REACH[reach]}</p>}
        <Told outcome={outcome} />
      </output>
      {reach === 'stranger' && (
        <p>
          <Link href="/device">This device</Link>
        </p>
      )}
    </>
  );
}

/** Closed until somebody wants to print. What to print is asked for when it is printed: the text of a long draft takes a while. */
export function PrintPanel({ printable }: { readonly printable: () => Printable }) {
  const [open, setOpen] = useState(false);
  return (
    <details className="print-panel no-print" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{PRINT.title}</summary>
      {open && <Panel printable={printable} />}
    </details>
  );
}
