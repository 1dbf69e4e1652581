// What is opened over the line with one press, and recorded with the next: slips, a time cut short, why another way is not
// taken, who takes over. The line itself stays where it was.
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { DEVIATIONS, EARLY_REASONS } from '../../../domain/guiding.ts';
import type { Procedure } from '../../../domain/procedure.ts';
import { compiledSurfaces } from './surfaces.ts';
import { Act } from './Act.tsx';
import type { Desk } from './desk.ts';

interface PanelProps {
  readonly title: string;
  readonly close: () => void;
  readonly children: ReactNode;
}

export function Panel({ title, close, children }: PanelProps) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className="g-panel" aria-label={title}>
      <div className="g-panel-head">
        <h2 ref={heading} tabIndex={-1}>
          {title}
        </h2>
        <Act press={close}>Back to the line</Act>
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

function Where({ procedure, desk, chosen, choose }: WhereProps) {
  return (
    <label className="g-field">
      What it touched, if you saw it
      <select value={chosen} onChange={(event) => choose(event.currentTarget.value)}>
        <option value="">Not seen, or not one thing</option>
        {compiledSurfaces(procedure).map((surface) => (
          <option key={surface} value={surface}>
            {desk.words.surface(procedure, surface)}
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
  const said = text.trim() === '' ? {} : { text: text.trim() };
  const close = (): void => open('none');
  const record = (what: Parameters<Desk['press']>[0]): void => {
    press(what);
    close();
  };
  return (
    <Panel title="What went wrong?" close={close}>
      <ul className="plain g-list">
        {[...screen.slips, ...screen.finds].map(({ key }) => (
          <li key={key}>
            <Act kind="wrong" press={() => record({ is: 'slip', event: key, ...said })}>
              {words.event(procedure, key)}
            </Act>
          </li>
        ))}
      </ul>
      <h3>Anything else</h3>
      <Where procedure={procedure} desk={desk} chosen={surface} choose={setSurface} />
      <label className="g-field">
        In your own words (no names)
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
    <Panel title="Why before time? It is recorded." close={() => open('none')}>
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
  readonly label: string;
  readonly button: string;
  readonly close: () => void;
  readonly write: (text: string) => void;
  readonly usual?: readonly string[];
}

/** A reason in words: one of the usual ones with one tap, or written. */
export function Write({ title, label, button, close, write, usual = [] }: WriteProps) {
  const [text, setText] = useState('');
  const send = (said: string): void => {
    if (said.trim() === '') return;
    write(said.trim());
    close();
  };
  return (
    <Panel title={title} close={close}>
      <ul className="plain g-list">
        {usual.map((one) => (
          <li key={one}>
            <Act press={() => send(one)}>{one}</Act>
          </li>
        ))}
      </ul>
      <label className="g-field">
        {label}
        <input value={text} onChange={(event) => setText(event.currentTarget.value)} maxLength={500} />
      </label>
      <Act kind="main" press={() => send(text)}>
        {button}
      </Act>
    </Panel>
  );
}
