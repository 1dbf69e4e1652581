// What the logbook's forms share: fields, when something happened, who writes it, the press that writes it.
import { type ReactNode, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link, useLocation } from 'wouter';
import { TextLine } from '../compose/parts.tsx';
import type { KindName } from '../../journal/kinds/index.ts';
import { reasonOf, type ToWrite } from '../journal/book.ts';
import { useBar } from '../journal/useBar.ts';
import { book } from '../journal/useBook.ts';
import { NotListed, Who } from '../journal/Who.tsx';
import { OneOf } from '../parts/Choices.tsx';
import { Labelled } from '../parts/Labelled.tsx';
import { LOG } from './labels.ts';
import { localOf, type When } from './model.ts';
import { Wrong } from '../parts/Wrong.tsx';

const { forms } = LOG;

interface TypedProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly type?: 'datetime-local' | 'number' | 'date' | 'text';
  readonly among?: readonly string[];
  readonly hint?: string;
  readonly wrong?: string;
}

/** A field of the browser's own; `among` are offered while one types. */
export function Typed({ value, set, type = 'text', among = [], ...labels }: TypedProps) {
  return (
    <Labelled {...labels}>
      {(tied) => (
        <>
          <input
            {...tied}
            type={type}
            value={value}
            autoComplete="off"
            {...(type === 'number' ? { min: 1, inputMode: 'numeric' as const } : {})}
            {...(among.length > 0 ? { list: `${tied.id}-list` } : {})}
            onChange={(event) => set(event.target.value)}
          />
          {among.length > 0 && (
            <datalist id={`${tied.id}-list`}>
              {among.map((one) => (
                <option key={one} value={one}>
                  {one}
                </option>
              ))}
            </datalist>
          )}
        </>
      )}
    </Labelled>
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
  /** What it writes: a kind of this family. */
  readonly kind: KindName;
  /** Asked for the entry as the button is pressed; or what is missing, in words. */
  readonly entry: (now: number) => ToWrite | string;
  /** Whether the way into the staff list stands further up. */
  readonly listsAbove?: boolean;
  readonly children: ReactNode;
}

/** A form that writes one entry and goes back to who is in. */
export function EntryForm({ title, press, kind, entry, listsAbove = false, children }: FormProps) {
  const [, go] = useLocation();
  const bar = useBar(kind);
  const why = useId();
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
    if (busy || bar !== undefined) return;
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
      {bar && (
        <p id={why} className="notice" role="note">
          {bar}
        </p>
      )}
      {children}
      <div className="fields">
        <Who label={forms.by} value={by} set={setBy} />
      </div>
      {!listsAbove && <NotListed />}
      <Wrong text={wrong} />
      <p className="actions">
        <Button
          type="submit"
          className="button main log-press"
          isDisabled={busy || bar !== undefined}
          {...(bar === undefined ? {} : { 'aria-describedby': why })}
        >
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
