// What the logbook's forms share: fields, when something happened, who writes it, the press that writes it.
import { type ReactNode, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link, useLocation } from 'wouter';
import { TextLine } from '../compose/parts.tsx';
import { reasonOf, type ToWrite } from '../journal/book.ts';
import { book } from '../journal/useBook.ts';
import { NotListed, Who } from '../journal/Who.tsx';
import { OneOf } from '../parts/Choices.tsx';
import { LOG } from './labels.ts';
import { localOf, type When } from './model.ts';

const { forms } = LOG;

interface TypedProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly type?: 'datetime-local' | 'number' | 'date' | 'text';
  readonly among?: readonly string[];
  readonly hint?: string;
}

/** A field of the browser's own; `among` are offered while one types. */
export function Typed({ label, value, set, type = 'text', among = [], hint }: TypedProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type={type}
        value={value}
        autoComplete="off"
        {...(type === 'number' ? { min: 1, inputMode: 'numeric' as const } : {})}
        {...(among.length > 0 ? { list: `${id}-list` } : {})}
        {...(hint === undefined ? {} : { 'aria-describedby': `${id}-hint` })}
        onChange={(event) => set(event.target.value)}
      />
      {among.length > 0 && (
        <datalist id={`${id}-list`}>
          {among.map((one) => (
            <option key={one} value={one}>
              {one}
            </option>
          ))}
        </datalist>
      )}
      {hint !== undefined && (
        <span id={`${id}-hint`} className="quiet">
          {hint}
        </span>
      )}
    </div>
  );
}

export const NOW: When = { is: 'now', local: '', reason: '' };
const WHENS = ['now', 'earlier'] as const;

export function WhenField({ when, set }: { readonly when: When; readonly set: (when: When) => void }) {
  const choose = (is: When['is']): void =>
    set({ ...when, is, local: when.local === '' ? localOf(Date.now()) : when.local });
  return (
    <>
      <OneOf
        label={forms.when}
        values={WHENS}
        chosen={when.is}
        set={choose}
        nameOf={(is) => (is === 'now' ? forms.whenNow : forms.whenEarlier)}
      />
      {when.is === 'earlier' && (
        <div className="fields log-times">
          <Typed
            label={forms.at}
            type="datetime-local"
            value={when.local}
            set={(local) => set({ ...when, local })}
          />
          <TextLine label={forms.late} value={when.reason} set={(reason) => set({ ...when, reason })} />
        </div>
      )}
    </>
  );
}

interface FormProps {
  readonly title: string;
  readonly press: string;
  /** Asked for the entry as the button is pressed; or what is missing, in words. */
  readonly entry: (now: number) => ToWrite | string;
  /** Whether the way into the staff list stands further up. */
  readonly listsAbove?: boolean;
  readonly children: ReactNode;
}

/** A form that writes one entry and goes back to who is in. */
export function EntryForm({ title, press, entry, listsAbove = false, children }: FormProps) {
  const [, go] = useLocation();
  const [by, setBy] = useState('');
  const [wrong, setWrong] = useState('');
  const [busy, setBusy] = useState(false);
  const write = async (): Promise<void> => {
    const made = entry(Date.now());
    const missing = typeof made === 'string' ? made : by === '' ? LOG.mistakes.by : '';
    setWrong(missing);
    if (missing !== '' || typeof made === 'string') return;
    setBusy(true);
    await book.write({ by, entries: [made] });
    go('/logbook');
  };
  const act = (): void => {
    if (busy) return;
    write()
      .catch((error: unknown) => setWrong(reasonOf(error)))
      .finally(() => setBusy(false));
  };
  return (
    <form
      className="log-form"
      aria-label={title}
      onSubmit={(event) => {
        event.preventDefault();
        act();
      }}
    >
      {children}
      <div className="fields">
        <Who label={forms.by} value={by} set={setBy} />
      </div>
      {!listsAbove && <NotListed />}
      <p role="alert" className={wrong === '' ? '' : 'wrong'}>
        {wrong}
      </p>
      <p className="actions">
        <Button type="submit" className="button main log-press" isDisabled={busy}>
          {press}
        </Button>
        <Link href="/logbook" className="button log-press">
          {LOG.acts.back}
        </Link>
      </p>
      <p className="quiet">{LOG.stays}</p>
    </form>
  );
}
