// Less often needed: the second displays, a note, handing over to another observer, breaking off. One press away, so that the
// screen of the line holds nothing that is not needed at every line.
import { useState } from 'react';
import type { Language } from '../../../words/index.ts';
import { useBook } from '../../journal/useBook.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';
import { Field } from './Field.tsx';
import { memberIn, successorFrom } from './people.ts';
import { rowsIn } from './Large.tsx';
import { Panel } from './Panels.tsx';
import { Exposure } from './Suspects.tsx';

function openDisplay(exit: string, role: string): void {
  window.open(`/guide/${exit}/display/${role}`, `display-${exit}-${role}`, 'popup');
}

export function More({ desk }: { readonly desk: Desk }) {
  const { run, words, screen, press, open, state } = desk;
  const [text, setText] = useState('');
  const close = (): void => open('none');
  const { guide } = words;
  const { labels } = guide;
  const hasHelper = state.shown.script.setup.procedure.people.some(({ role }) => role === 'assistant');
  return (
    <Panel title={labels.line.more} words={words} close={close}>
      <div className="g-acts">
        <Act press={() => openDisplay(run.exit, 'wearer')}>{labels.display.openWearer}</Act>
        {hasHelper && (
          <Act press={() => openDisplay(run.exit, 'assistant')}>{labels.display.openAssistant}</Act>
        )}
        {(screen.presses.includes('hand-over') || screen.presses.includes('take-over')) && (
          <Act press={() => open('hand-over')}>{guide.presses['hand-over']}</Act>
        )}
      </div>
      <label className="g-field">
        {labels.breakOff(guide.presses.note)}
        <input value={text} onChange={(event) => setText(event.currentTarget.value)} maxLength={500} />
      </label>
      <div className="g-acts">
        <Act
          press={() => {
            press({ is: 'note', text });
            close();
          }}
        >
          {guide.presses.note}
        </Act>
        {screen.presses.includes('break-off') && (
          <Act
            kind="wrong"
            press={() => {
              press({ is: 'break-off', reason: text });
              close();
            }}
          >
            {guide.presses['break-off']}
          </Act>
        )}
      </div>
    </Panel>
  );
}

/** Whoever takes over is told what of the body may be contaminated while its plan was not opened. */
function Passed({ desk }: { readonly desk: Desk }) {
  return (
    desk.screen.exposed && (
      <p className="g-after">
        <Exposure desk={desk} />
      </p>
    )
  );
}

/** Who is asked: somebody of the staff list who has no other part in this exit, or somebody listed now. */
function Successor({ desk }: { readonly desk: Desk }) {
  const { state, words, press, open } = desk;
  const { handover } = words.guide.labels;
  const { staff } = useBook();
  const { people } = state.core;
  const [typed, type] = useState('');
  const [wrong, setWrong] = useState('');
  const busy = [people.observer, people.wearer, ...people.assistants];
  const others = Object.keys(staff).filter((person) => !busy.includes(person));
  const ask = (): void => {
    successorFrom(typed, staff, people, words).then(
      (found) => {
        if (typeof found === 'string') setWrong(found);
        else press({ is: 'hand-over', to: found.person });
      },
      (error: unknown) => setWrong(error instanceof Error ? error.message : String(error)),
    );
  };
  return (
    <Panel title={handover.to} words={words} close={() => open('none')}>
      <Passed desk={desk} />
      <ul className="plain g-list">
        {others.map((to) => (
          <li key={to}>
            <Act press={() => press({ is: 'hand-over', to })}>{memberIn(words, staff, to)}</Act>
          </li>
        ))}
      </ul>
      <Field label={handover.other} value={typed} set={type} />
      {wrong !== '' && <p role="alert">{wrong}</p>}
      <Act press={ask}>{handover.ask}</Act>
    </Panel>
  );
}

/** First who is asked; then they themselves say which line was confirmed last, so that nobody takes over unlooked. */
export function Handover({ desk }: { readonly desk: Desk }) {
  const { screen, state, words, press, open } = desk;
  const { staff } = useBook();
  const { handover } = screen;
  const { core } = state;
  const { labels } = words.guide;
  const close = (): void => open('none');
  if (!handover) return <Successor desk={desk} />;
  const choices = choicesAt(core.lastAnswered, core.script.lines, words.language as Language);
  const take = (line: number | null): void => {
    press({ is: 'take-over', line }, handover.to);
    // Whoever named another line looks again.
    if (line === core.lastAnswered) close();
  };
  return (
    <Panel title={labels.handover.which(memberIn(words, staff, handover.to))} words={words} close={close}>
      <Passed desk={desk} />
      {screen.refusal === 'other-line' && <p role="alert">{words.guide.refusals['other-line']}</p>}
      <ul className="plain g-list">
        {choices.map(({ line, step, rows }) => (
          <li key={line}>
            <Act press={() => take(line)}>
              {step}: {rows.join(' ')}
            </Act>
          </li>
        ))}
        {core.lastAnswered === null && (
          <li>
            <Act press={() => take(null)}>{labels.handover.noneYet}</Act>
          </li>
        )}
      </ul>
      <Act
        press={() => {
          press({ is: 'keep' });
          close();
        }}
      >
        {words.guide.presses.keep}
      </Act>
    </Panel>
  );
}

type Lines = Desk['state']['core']['script']['lines'];

/** The watched line that was answered last among its neighbours, each with what was read of its step. */
function choicesAt(last: number | null, lines: Lines, language: Language) {
  const looks = lines.flatMap((line, index) => (line.kind === 'look' ? [index] : []));
  const here = looks.findIndex((index) => index >= (last ?? 0));
  const near = looks.slice(Math.max(0, here - 1), here + 2);
  const all = last === null || near.includes(last) ? near : [...near, last];
  return all
    .toSorted((a, b) => a - b)
    .map((line) => {
      const step = lines[line]?.step ?? 0;
      const read = lines.find((one) => one.step === step && one.kind === 'read') ?? lines[line];
      return { line, step: step + 1, rows: rowsIn(read, language) };
    });
}
