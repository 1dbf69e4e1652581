// Where a draft begins: from nothing, from a copy of any procedure there is, from a file; and the drafts of this browser.
import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { Link, useLocation } from 'wouter';
import { type Diagnostic, describeDiagnostic } from '../../language/index.ts';
import { type Entry, LIBRARY, useOpened } from '../library.ts';
import { namesOf } from '../model/choiceNames.ts';
import { useTitle } from '../parts/useTitle.ts';
import { words } from '../words.ts';
import { asCopy, fromNothing, fromText } from './model/draft.ts';
import { Chooser } from './parts.tsx';
import { begunAt, drafts, useDraft, useDraftIds } from './store/useDrafts.ts';

/** Far above any procedure; larger files are something else. */
const MOST_BYTES = 2_000_000;

function DraftLine({ id }: { readonly id: string }) {
  const state = useDraft(id);
  const [sure, ask] = useState(false);
  if (!state) return null;
  const { done, procedure } = state.history.present;
  const { title, kind, version, steps } = procedure;
  return (
    <li className="procedure draft-line">
      <h3>
        <Link href={`/write/${id}/steps`}>{title || 'Without a title'}</Link>
      </h3>
      <p className="tags">
        <span className="badge">{words.kind(kind)}</span>
        {version !== '' && <span className="badge">version {version}</span>}
        <span className="badge">
          {steps.length} {steps.length === 1 ? 'step' : 'steps'}
        </span>
      </p>
      <p className="quiet">
        Begun {begunAt(id).toLocaleString()}. Last: {done}.
      </p>
      <p className="actions">
        {!sure && (
          <Button className="button" aria-label={`Delete ${title}`} onPress={() => ask(true)}>
            Delete …
          </Button>
        )}
        {sure && (
          <>
            <Button className="button" onPress={() => drafts.remove(id)}>
              Delete it for good
            </Button>
            <Button className="button" onPress={() => ask(false)}>
              Keep it
            </Button>
          </>
        )}
      </p>
    </li>
  );
}

interface Problem {
  readonly text: string;
  readonly diagnostics: readonly Diagnostic[];
}

const sentence = (diagnostic: Diagnostic): string => {
  const { wrong, mend } = describeDiagnostic(diagnostic);
  return `Line ${diagnostic.line}, column ${diagnostic.column}: ${wrong} ${mend}`;
};

/** Begins a draft from a text and goes there; else says why not. */
function useBegin(): {
  readonly begin: (text: string, name: string, copy: boolean) => void;
  readonly wrong: Problem | undefined;
  readonly fail: (text: string) => void;
} {
  const [, go] = useLocation();
  const [wrong, setWrong] = useState<Problem>();
  const begin = (text: string, name: string, copy: boolean): void => {
    const { procedure, diagnostics, comments } = fromText(text, name);
    if (!procedure) {
      setWrong({ text: `${name} has errors, so no draft was made.`, diagnostics });
      return;
    }
    const id = drafts.create(copy ? asCopy(procedure) : procedure, copy ? 'Copied' : `Opened ${name}`);
    go(`/write/${id}/steps${comments && !copy ? '?comments' : ''}`);
  };
  return { begin, wrong, fail: (text) => setWrong({ text, diagnostics: [] }) };
}

function FromFile({ begin, fail }: Pick<ReturnType<typeof useBegin>, 'begin' | 'fail'>) {
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    if (file.size > MOST_BYTES) fail(`${file.name} is larger than a procedure can be.`);
    else begin(await file.text(), file.name, false);
  };
  return (
    <FileTrigger
      acceptedFileTypes={['.yaml', '.yml', 'text/yaml', 'application/yaml']}
      onSelect={(files) => {
        take(files?.[0]).catch(() => fail('The file could not be read.'));
      }}
    >
      <Button className="button">From a file …</Button>
    </FileTrigger>
  );
}

function FromCopy({ begin }: Pick<ReturnType<typeof useBegin>, 'begin'>) {
  const opened = useOpened();
  const all: readonly Entry[] = [...(opened ? [opened] : []), ...LIBRARY];
  return (
    <Chooser
      label="From a copy of"
      press="Copy"
      choices={[...namesOf(all)].map(([value, name]) => ({ value, name }))}
      take={(id) => {
        const entry = all.find((one) => one.id === id);
        if (entry) begin(entry.text, entry.fileName, true);
      }}
    />
  );
}

export function WriteHome() {
  const [, go] = useLocation();
  const ids = useDraftIds();
  const { begin, wrong, fail } = useBegin();
  useTitle('Write');
  const start = (kind: 'doffing' | 'donning') =>
    go(`/write/${drafts.create(fromNothing(kind), `New ${words.kind(kind)}`)}/people`);
  return (
    <div className="narrow">
      <h1>Write a procedure</h1>
      <p>
        Say who wears what, what the room is, and then each step as a sentence. Every edit is checked as you
        make it, kept in this browser, and can be undone. Nothing is sent anywhere, unless you have the server
        set a paper.
      </p>
      <section aria-labelledby="begin-title">
        <h2 id="begin-title">Begin</h2>
        <div className="actions">
          <Button className="button main" onPress={() => start('doffing')}>
            New doffing
          </Button>
          <Button className="button" onPress={() => start('donning')}>
            New donning
          </Button>
          <FromFile begin={begin} fail={fail} />
        </div>
        <FromCopy begin={begin} />
        <div role="alert" className={wrong ? 'wrong' : ''}>
          {wrong && <p>{wrong.text}</p>}
          {wrong && wrong.diagnostics.length > 0 && (
            <ul>
              {wrong.diagnostics.map((one) => (
                <li key={`${one.line}:${one.column}:${one.code}`}>{sentence(one)}</li>
              ))}
            </ul>
          )}
        </div>
      </section>
      {ids.length > 0 && (
        <section aria-labelledby="drafts-title">
          <h2 id="drafts-title">Your drafts in this browser</h2>
          <ul className="procedures">
            {ids.map((id) => (
              <DraftLine key={id} id={id} />
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
