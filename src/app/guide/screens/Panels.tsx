// What is opened over the line with one press, and recorded with the next: slips, a time cut short, why another way is not
// taken, who takes over. The line itself stays where it was.
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { DEVIATIONS, EARLY_REASONS } from '../../../domain/guiding.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Words } from '../../../words/index.ts';
import { compiledSurfaces } from './surfaces.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';

interface PanelProps {
  readonly title: string;
  readonly words: Words;
  readonly close: () => void;
  readonly children: ReactNode;
}

export function Panel({ title, words, close, children }: PanelProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="g-panel" aria-label={title}>
      <div className="g-panel-head">
        <h2 ref={heading} tabIndex={-1}>
          {title}
        </h2>
        <Act press={close}>{words.guide.labels.line.backToLine}</Act>
      </div>
      {children}
    </section>
  );
}

interface WhereProps {
  readonly procedure: Procedure;
  readonly desk: Desk;
  readonly chosen: string;
  readonly choose: (surface: string) => void;
}

function Where({ procedure, desk: { words }, chosen, choose }: WhereProps) {
  const { wrong } = words.guide.labels;
  return (
    <label className="g-field">
      {wrong.touched}
      <select value={chosen} onChange={(event) => choose(event.currentTarget.value)}>
        <option value="">{wrong.notOne}</option>
        {compiledSurfaces(procedure).map((surface) => (
          <option key={surface} value={surface}>
            {words.surface(procedure, surface)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Each step's likely slips as one tap, then everything else as a category. */
export function Wrong({ desk }: { readonly desk: Desk }) {
  const { words, screen, state, press, open } = desk;
  const { procedure } = state.shown.script.setup;
  const [surface, setSurface] = useState('');
  const [text, setText] = useState('');
  const { wrong } = words.guide.labels;
  const said = text.trim() === '' ? {} : { text: text.trim() };
  const close = (): void => open('none');
  const record = (what: Parameters<Desk['press']>[0]): void => {
    press(what);
    close();
  };
  return (
    <Panel title={wrong.title} words={words} close={close}>
      <ul className="plain g-list">
        {[...screen.slips, ...screen.finds].map(({ key }) => (
          <li key={key}>
            <Act kind="wrong" press={() => record({ is: 'slip', event: key, ...said })}>
              {words.event(procedure, key)}
            </Act>
          </li>
        ))}
      </ul>
      <h3>{wrong.other}</h3>
      <Where procedure={procedure} desk={desk} chosen={surface} choose={setSurface} />
      <label className="g-field">
        {wrong.ownWords}
        <input value={text} onChange={(event) => setText(event.currentTarget.value)} maxLength={500} />
      </label>
      <ul className="plain g-list">
        {DEVIATIONS.map((category) => (
          <li key={category}>
            <Act
              press={() =>
                record({
                  is: 'deviation',
                  category,
                  ...(surface === '' ? {} : { surfaces: [surface] }),
                  ...said,
                })
              }
            >
              {words.guide.deviations[category]}
            </Act>
          </li>
        ))}
      </ul>
    </Panel>
  );
}

export function Early({ desk }: { readonly desk: Desk }) {
  const { words, press, open } = desk;
  return (
    <Panel title={words.guide.labels.wrong.early} words={words} close={() => open('none')}>
      <ul className="plain g-list">
        {EARLY_REASONS.map((reason) => (
          <li key={reason}>
            <Act
              press={() => {
                press({ is: 'go-early', reason });
                open('none');
              }}
            >
              {words.guide.early[reason]}
            </Act>
          </li>
        ))}
      </ul>
    </Panel>
  );
}

interface WriteProps {
  readonly title: string;
  readonly words: Words;
  readonly button: string;
  readonly close: () => void;
  readonly write: (text: string) => void;
  readonly usual?: readonly string[];
}

/** A reason in words: one of the usual ones with one tap, or written. */
export function Write({ title, words, button, close, write, usual = [] }: WriteProps) {
  const [text, setText] = useState('');
  const send = (said: string): void => {
    if (said.trim() === '') return;
    write(said.trim());
    close();
  };
  return (
    <Panel title={title} words={words} close={close}>
      <ul className="plain g-list">
        {usual.map((one) => (
          <li key={one}>
            <Act press={() => send(one)}>{one}</Act>
          </li>
        ))}
      </ul>
      <label className="g-field">
        {words.guide.labels.wrong.reason}
        <input value={text} onChange={(event) => setText(event.currentTarget.value)} maxLength={500} />
      </label>
      <Act kind="main" press={() => send(text)}>
        {button}
      </Act>
    </Panel>
  );
}
