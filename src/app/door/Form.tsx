// A form that is sent to the server: what is wrong stands beside its field and is gone to, the rest below the fields. What was
// typed stays until the server has taken it.
import { type ReactNode, useId, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { Labelled } from '../parts/Labelled.tsx';
import { Wrong } from '../parts/Wrong.tsx';

interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => void;
  /** 'off': somebody else's name, which is not this browser's to keep. */
  readonly purpose: 'username' | 'current-password' | 'new-password' | 'off';
  readonly hint?: string;
  readonly wrong?: string;
}

/** Says what it is for, so that a person's own keeper of passwords can fill it in. */
export function Field({ value, set, purpose, ...labels }: FieldProps) {
  return (
    <Labelled {...labels}>
      {(tied) => (
        <input
          {...tied}
          type={purpose.endsWith('-password') ? 'password' : 'text'}
          value={value}
          autoComplete={purpose}
          autoCapitalize="none"
          spellCheck={false}
          onChange={(event) => set(event.target.value)}
        />
      )}
    </Labelled>
  );
}

const INVALID = '[aria-invalid="true"]';

interface FormProps {
  readonly title: string;
  /** Of its heading. */
  readonly level?: 2 | 3;
  readonly press: string;
  /** What is missing; empty where nothing is. */
  readonly missing: string;
  /** Sends it, and says why it failed. */
  readonly send: () => Promise<string>;
  /** It was pressed. */
  readonly onTry?: () => void;
  /** Told whether it was pressed already: before that nobody wants to hear what is missing. */
  readonly children: ReactNode | ((tried: boolean) => ReactNode);
}

export function Form({ title, level = 2, press, missing, send, onTry, children }: FormProps) {
  const id = useId();
  const form = useRef<HTMLFormElement>(null);
  const [tried, setTried] = useState(false);
  const [busy, setBusy] = useState(false);
  const [wrong, setWrong] = useState('');
  const Heading = `h${level}` as const;
  const say = (why: string): void => {
    setWrong(why);
    setTried(why !== '');
    if (why === '') return;
    requestAnimationFrame(() => {
      const inForm = form.current?.querySelector<HTMLElement>(INVALID);
      (inForm ?? document.querySelector<HTMLElement>(`main ${INVALID}`))?.focus();
    });
  };
  const act = async (): Promise<void> => {
    onTry?.();
    say(missing);
    if (missing !== '') return;
    setBusy(true);
    say(await send());
    setBusy(false);
  };
  return (
    <form
      ref={form}
      aria-labelledby={id}
      onSubmit={(event) => {
        event.preventDefault();
        if (!busy) act().catch(() => undefined);
      }}
    >
      <Heading id={id}>{title}</Heading>
      <div className="fields lined roomy">{typeof children === 'function' ? children(tried) : children}</div>
      <Wrong text={wrong} />
      <p className="actions">
        <Button type="submit" className="button main">
          {press}
        </Button>
      </p>
    </form>
  );
}
