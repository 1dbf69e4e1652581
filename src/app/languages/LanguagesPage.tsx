// The languages there are, how far each may be trusted, and the unit's own sentences.
import { useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import { Link } from 'wouter';
import { type Language, LANGUAGES } from '../../words/index.ts';
import { useTitle } from '../parts/useTitle.ts';
import { Opening } from '../versions/Opening.tsx';
import { useSpoken } from '../words.ts';
import { LANGUAGE_NAMES } from './names.ts';
import { useTrust } from './useTrust.ts';
import { type Complaint, dropWording, takeWording } from './wording.ts';

function LanguageLine({ language }: { readonly language: Language }) {
  const { state, note } = useTrust(language);
  const { own, english } = LANGUAGE_NAMES[language];
  const badge = {
    'machine-made': 'machine-made',
    changed: 'to be reviewed again',
    signed: 'signed off',
  } as const;
  return (
    <li className="procedure">
      <h3>
        <Link href={`/languages/${language}`}>
          <span lang={language}>{own}</span>
          {language !== 'en' && ` – ${english}`}
        </Link>{' '}
        <span className={state.is === 'signed' ? 'badge' : 'badge status-judgement'}>{badge[state.is]}</span>
      </h3>
      <p>{note.at(-1)}</p>
      {state.is === 'changed' && (
        <p>
          Signed off on {state.signed.on}; what it says has changed since, so it counts as machine-made again.
        </p>
      )}
    </li>
  );
}

/** Far above any wording. */
const MOST_BYTES = 1_000_000;

function OwnWording() {
  const { overrides } = useSpoken();
  const [complaints, complain] = useState<readonly Complaint[]>([]);
  const inPlace = Object.entries(overrides).map(
    ([language, { steps, sentences }]) => `${language}: ${steps.size + sentences.size}`,
  );
  const take = async (file: File | undefined): Promise<void> => {
    if (!file) return;
    if (file.size > MOST_BYTES) complain([{ line: 1, column: 1, text: `${file.name} is too large.` }]);
    else complain(takeWording(await file.text(), file.name));
  };
  return (
    <section aria-labelledby="own-title">
      <h2 id="own-title">The unit’s own sentences</h2>
      <p>
        A file of wording puts the unit’s own sentences in place of the program’s. They stand among the rows
        that are signed off. {inPlace.length > 0 ? `In place: ${inPlace.join(', ')}.` : 'None are in place.'}
      </p>
      <p className="actions">
        <FileTrigger
          acceptedFileTypes={['.yaml', '.yml', '.json']}
          onSelect={(files) => {
            take(files?.[0]).catch(() =>
              complain([{ line: 1, column: 1, text: 'The file could not be read.' }]),
            );
          }}
        >
          <Button className="button">Open a file of wording …</Button>
        </FileTrigger>
        {inPlace.length > 0 && (
          <Button className="button" onPress={dropWording}>
            Take them out again
          </Button>
        )}
      </p>
      {complaints.length > 0 && (
        <ul role="alert" className="limits">
          {complaints.map(({ line, column, text }) => (
            <li key={`${line}:${column}:${text}`}>
              Line {line}, column {column}: {text}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

export function LanguagesPage() {
  useTitle('Languages');
  return (
    <div className="narrow">
      <h1>Languages</h1>
      <p className="lead">
        Steps, findings, mends, routes and comparisons are said in each of these. All were made by machine;
        each counts as such until a clinician who speaks it natively has read every sentence and signed it
        off. What stands on the screens of an exit is said in it too. The labels and buttons of the other
        pages, and what is wrong with a file, are in English in every language.
      </p>
      <Opening />
      <h2>How far each may be trusted</h2>
      <ul className="procedures">
        {LANGUAGES.map((language) => (
          <LanguageLine key={language} language={language} />
        ))}
      </ul>
      <OwnWording />
    </div>
  );
}
