// One language to be read and signed off: every sentence pattern and every name beside English, the unit's own sentences,
// and what the check says of the invented unit's procedure in it.
import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import { memberText } from '../../versions/staff.ts';
import { isDay } from '../../versions/days.ts';
import { type Language, languageOf, unusedWording, type Words, wordsFor } from '../../words/index.ts';
import { useCheck } from '../check/client.ts';
import { useBar } from '../journal/useBar.ts';
import { book, useBook } from '../journal/useBook.ts';
import { NotListed, Who } from '../journal/Who.tsx';
import { LIBRARY, questionFor } from '../library.ts';
import { shownFor } from '../model/findings.ts';
import { NotFound } from '../pages/NotFound.tsx';
import { Tick } from '../parts/Choices.tsx';
import { Confirm } from '../parts/Confirm.tsx';
import { Day } from '../parts/Day.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { Opening } from '../versions/Opening.tsx';
import { useSpoken } from '../words.ts';
import { LANGUAGE_NAMES } from './names.ts';
import { GROUP_TITLES, type Row, rowsOf } from './rows.ts';
import { type Trust, useTrust } from './useTrust.ts';

interface TableProps {
  readonly language: Language;
  readonly rows: readonly Pick<Row, 'key' | 'english' | 'text'>[];
  readonly caption: string;
}

function Side({ language, rows, caption }: TableProps) {
  const alone = language === 'en';
  return (
    <table className="patterns">
      <caption className="visually-hidden">{caption}</caption>
      <thead>
        <tr>
          {!alone && <th scope="col">English</th>}
          <th scope="col">{LANGUAGE_NAMES[language].english}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ key, english, text }) => (
          <tr key={key}>
            {!alone && <td>{english}</td>}
            <td lang={language}>{text}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What the check says of the invented unit's doffing, beside English: the patterns at work. */
function Sample({ language }: { readonly language: Language }) {
  const { overrides } = useSpoken();
  const entry = LIBRARY.find(({ invented, kind }) => invented && kind === 'doffing') ?? LIBRARY[0]!;
  const { result } = useCheck(questionFor(entry));
  const judged = result?.judged;
  const rows = useMemo(() => {
    if (!judged) return [];
    const [own, english] = [wordsFor(language, overrides), wordsFor('en')];
    const { procedure, findings } = judged;
    const said = (words: Words): readonly string[] => [
      ...procedure.steps.map((step) => words.step(procedure, step)),
      ...shownFor(findings, 'enveloped').map(({ finding }) => words.finding(procedure, finding).text),
    ];
    const inEnglish = said(english);
    return said(own).map((text, at) => ({ key: String(at), english: inEnglish[at] ?? '', text }));
  }, [judged, language, overrides]);
  const unused = judged ? unusedWording(wordsFor(language), overrides[language], judged.procedure) : [];
  return (
    <details>
      <summary>
        <b>
          Steps and findings of “{entry.title}”{rows.length > 0 && ` (${rows.length})`}
        </b>
      </summary>
      {rows.length === 0 && <output className="waiting">Checking the procedure …</output>}
      {unused.map(({ step, why }) => (
        <p key={step} className="quiet">
          The unit’s sentence for step “{step}” is not used in it:{' '}
          {why === 'stale' ? 'the step says something else now.' : 'it has no such step.'}
        </p>
      ))}
      <Side language={language} rows={rows} caption="Steps and findings of the sample procedure" />
    </details>
  );
}

interface SignProps {
  readonly language: Language;
  readonly trust: Trust;
  readonly rows: number;
  readonly today: string;
}

function SignOff({ language, trust, rows, today }: SignProps) {
  const { staff, is } = useBook();
  const bar = useBar('language.signed-off');
  const [who, setWho] = useState('');
  const [native, setNative] = useState(false);
  const [read, setRead] = useState(false);
  const [on, setOn] = useState(today);
  const { english } = LANGUAGE_NAMES[language];
  const missing =
    who === ''
      ? 'Choose who signs.'
      : !native || !read
        ? 'Both must be so.'
        : isDay(on)
          ? undefined
          : 'Say the day.';
  const write = async (): Promise<void> => {
    await book.write({
      by: who,
      entries: [{ kind: 'language.signed-off', body: { language, wording: trust.wording, on } }],
    });
    setNative(false);
    setRead(false);
  };
  return (
    <section aria-labelledby="sign-title">
      <h2 id="sign-title">Sign it off</h2>
      <div className="fields">
        <Who label="Who signs" value={who} set={setWho} />
        <Day label="On" value={on} set={setOn} />
      </div>
      <Tick on={native} set={setNative}>
        They are a clinician and speak {english} as their first language
      </Tick>
      <Tick on={read} set={setRead}>
        They have read all {rows} rows
      </Tick>
      <NotListed />
      <p className="actions">
        <Confirm
          label={`Sign ${english} off …`}
          title={`Sign ${english} off`}
          sentence={`The journal will say that ${memberText(staff, who)}, a clinician who speaks ${english} natively, signed off its ${rows} rows of wording ${trust.wording.slice(0, 12)} on ${on}.`}
          isDisabled={is !== 'ready' || missing !== undefined}
          bar={bar}
          write={write}
        />
        <output className="quiet">{bar ? '' : missing}</output>
      </p>
    </section>
  );
}

function Standing({ trust }: { readonly trust: Trust }) {
  const { staff } = useBook();
  const { state, note, wording } = trust;
  return (
    <>
      <p className={state.is === 'signed' ? '' : 'wrong'}>{note.at(-1)}</p>
      {state.is !== 'machine-made' && (
        <p>
          Signed off by {memberText(staff, state.signed.by)} on {state.signed.on} (entry{' '}
          {state.signed.unitNumber}), wording <code>{state.signed.wording.slice(0, 12)}</code>.
          {state.is === 'changed' && ' What it says has changed since: it is to be reviewed again.'}
        </p>
      )}
      <p className="quiet">
        Wording now: <code>{wording.slice(0, 12)}</code>, the hash of every row below.
      </p>
    </>
  );
}

function Reading({ language, today }: { readonly language: Language; readonly today: string }) {
  const { overrides } = useSpoken();
  const trust = useTrust(language);
  const rows = useMemo(() => rowsOf(language, overrides), [language, overrides]);
  const groups = [...new Set(rows.map(({ group }) => group))];
  const { own, english } = LANGUAGE_NAMES[language];
  useTitle(`Language: ${english}`);
  return (
    <div className="language">
      <h1>
        <span lang={language}>{own}</span>
        {language !== 'en' && ` – ${english}`}
      </h1>
      <Opening />
      <Standing trust={trust} />
      <p>
        Read every row as the observer would say it, to somebody in the equipment. Where a sentence is not
        right, put the unit’s own in its place (<Link href="/languages">Languages</Link>) before you sign. Not
        in the rows: the reasons of the order search, and the labels of these pages, which are in English.
      </p>
      {groups.map((group) => {
        const own = rows.filter((row) => row.group === group);
        return (
          <details key={group} open={group === 'own' || group === 'steps'}>
            <summary>
              <b>
                {GROUP_TITLES[group]} ({own.length})
              </b>
            </summary>
            <Side language={language} rows={own} caption={GROUP_TITLES[group]} />
          </details>
        );
      })}
      <Sample language={language} />
      <SignOff language={language} trust={trust} rows={rows.length} today={today} />
    </div>
  );
}

export function LanguagePage({ tag, today }: { readonly tag: string; readonly today: string }) {
  const language = languageOf(tag);
  if (language !== tag) return <NotFound what="This language" />;
  return <Reading key={language} language={language} today={today} />;
}
