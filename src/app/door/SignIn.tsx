// Signing in with one's own account, and choosing one's own password: at first because the server asks for it, later at will.
import { useState } from 'react';
import { Field, Form } from './Form.tsx';
import { PASSWORD_RULES, SIGN_IN } from './labels.ts';
import type { Refused } from './model.ts';

interface SignInProps {
  readonly note: string;
  /** The refusal; undefined where somebody is in. */
  readonly signIn: (name: string, password: string) => Promise<Refused | undefined>;
  readonly says: (refused: Refused) => string;
}

export function SignIn({ note, signIn, says }: SignInProps) {
  const [name, setName] = useState('');
  const [password, setPassword] = useState('');
  const send = async (): Promise<string> => {
    const refused = await signIn(name.trim(), password);
    // Whoever got no answer tries the same again.
    if (refused?.is !== 'lost') setPassword('');
    return refused ? says(refused) : '';
  };
  const missing = name.trim() === '' || password === '' ? SIGN_IN.empty : '';
  return (
    <>
      <p role="alert">{note}</p>
      <Form title={SIGN_IN.title} press={SIGN_IN.press} missing={missing} send={send}>
        <Field label={SIGN_IN.name} value={name} set={setName} purpose="username" />
        <Field label={SIGN_IN.password} value={password} set={setPassword} purpose="current-password" />
      </Form>
      <p className="quiet">{SIGN_IN.shared}</p>
    </>
  );
}

interface OwnProps {
  readonly name: string;
  readonly words: {
    readonly title: string;
    readonly says: string;
    readonly old: string;
    readonly own: string;
    readonly press: string;
    readonly empty: string;
  };
  /** The refusal; undefined where it is changed. */
  readonly change: (old: string, own: string) => Promise<Refused | undefined>;
  readonly says: (refused: Refused) => string;
}

export function OwnPassword({ name, words, change, says }: OwnProps) {
  const [old, setOld] = useState('');
  const [own, setOwn] = useState('');
  const send = async (): Promise<string> => {
    const refused = await change(old, own);
    if (refused) return says(refused);
    setOld('');
    setOwn('');
    return '';
  };
  return (
    <>
      <p>{words.says}</p>
      <Form
        title={words.title}
        press={words.press}
        missing={old === '' || own === '' ? words.empty : ''}
        send={send}
      >
        {/* Tells a keeper of passwords whose these are. */}
        <input type="text" autoComplete="username" value={name} readOnly hidden />
        <Field label={words.old} value={old} set={setOld} purpose="current-password" />
        <Field label={words.own} value={own} set={setOwn} purpose="new-password" hint={PASSWORD_RULES} />
      </Form>
    </>
  );
}
