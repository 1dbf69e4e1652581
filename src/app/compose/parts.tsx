// Fields of the writing page. The browser's own lists and text fields: every keyboard, screen reader and tablet knows
// them.
import { type ReactNode, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { Labelled } from '../parts/Labelled.tsx';

export interface Choice {
  readonly value: string;
  readonly name: string;
}

interface SelectProps {
  readonly label: string;
  readonly value: string;
  readonly choices: readonly Choice[];
  readonly set: (value: string) => void;
  /** What the empty choice is called; none is offered where absent. */
  readonly none?: string;
  /** Long names, a line of its own. */
  readonly long?: boolean;
  readonly hint?: ReactNode;
}

/** One of a list. A value that is not among the choices is shown all the same. */
export function Select({ label, value, choices, set, none, long = false, hint }: SelectProps) {
  const missing = value !== '' && !choices.some((choice) => choice.value === value);
  return (
    <Labelled label={label} long={long} hint={hint}>
      {(tied) => (
        <select {...tied} value={value} onChange={(event) => set(event.target.value)}>
          {none !== undefined && <option value="">{none}</option>}
          {missing && <option value={value}>{value.replaceAll('-', ' ')}</option>}
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.name}
            </option>
          ))}
        </select>
      )}
    </Labelled>
  );
}

interface ChooserProps {
  readonly label: string;
  readonly choices: readonly Choice[];
  readonly take: (value: string) => void;
  /** What the button says. */
  readonly press: string;
}

/** One of a list, taken by the button or Enter: arrow keys in a list must not already do something. */
export function Chooser({ label, choices, take, press }: ChooserProps) {
  const id = useId();
  const [chosen, choose] = useState('');
  const value = choices.some((choice) => choice.value === chosen) ? chosen : '';
  const act = (): void => {
    if (value === '') return;
    take(value);
    choose('');
  };
  return (
    <div className="field chooser">
      <label htmlFor={id}>{label}</label>
      <div className="add-line">
        <select
          id={id}
          value={value}
          onChange={(event) => choose(event.target.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || value === '') return;
            event.preventDefault();
            act();
          }}
        >
          <option value="">(choose)</option>
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.name}
            </option>
          ))}
        </select>
        <Button className="button" aria-label={`${press}: ${label}`} isDisabled={value === ''} onPress={act}>
          {press}
        </Button>
      </div>
    </div>
  );
}

interface TextProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly long?: boolean;
  readonly hint?: ReactNode;
  /** Most characters that are taken. What is longer stays as it was typed, and is said to be: nothing is cut off unseen. */
  readonly most?: number;
}

const tooLong = (value: string, most: number): string =>
  value.trim().length > most
    ? `${value.trim().length - most} too many: at most ${most} characters are taken here.`
    : '';

export function TextLine({ label, value, set, long = false, hint, most = Infinity }: TextProps) {
  // Undo in these is the draft's own.
  const shared = { value, 'data-draft': true };
  return (
    <Labelled label={label} hint={hint} long={long} wrong={tooLong(value, most)}>
      {(tied) =>
        long ? (
          <textarea {...tied} {...shared} rows={2} onChange={(event) => set(event.target.value)} />
        ) : (
          <input {...tied} {...shared} type="text" onChange={(event) => set(event.target.value)} />
        )
      }
    </Labelled>
  );
}

interface NameProps {
  readonly label: string;
  readonly value: string;
  /** Most characters of a name. */
  readonly most: number;
  /** Whether the name was taken. */
  readonly rename: (typed: string) => void;
}

/** A name of the file, changed when the field is left or Enter is pressed; Escape gives the old one back. */
export function NameLine({ label, value, most, rename }: NameProps) {
  return (
    <Labelled label={label}>
      {(tied) => (
        <input
          {...tied}
          key={value}
          type="text"
          maxLength={most}
          defaultValue={value.replaceAll('-', ' ')}
          onBlur={(event) => {
            rename(event.target.value);
            event.target.value = value.replaceAll('-', ' ');
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') event.currentTarget.blur();
            if (event.key === 'Escape') event.currentTarget.value = value.replaceAll('-', ' ');
          }}
        />
      )}
    </Labelled>
  );
}
