// What stands at the door of a page that needs the unit's server: waiting, signing in, the first password; and behind it whatever
// the page shows, which goes when nobody uses it.
import { type ComponentType, type ReactNode, useEffect } from 'react';
import { Button } from 'react-aria-components';
import { thisWorld } from '../offline/support.ts';
import { landOn } from '../parts/useLanding.ts';
import { DOOR, SIGN_IN } from './labels.ts';
import type { Guest } from './model.ts';
import { OwnPassword, SignIn } from './SignIn.tsx';
import type { Doorkeeper } from './useDoor.ts';
import { useUnattended } from './useUnattended.ts';

/** The page's first heading takes the focus where what had it went with the stage before. */
export function useLandOnHead(stage: string): void {
  useEffect(() => {
    if (stage !== 'asking') landOn(() => document.querySelector('main h1[tabindex]'));
  }, [stage]);
}

export function PlainNote() {
  if (thisWorld().secure) return null;
  return (
    <p className="wrong" role="note">
      {DOOR.plain}
    </p>
  );
}

export function Shut({ says, ask }: { readonly says: string; readonly ask: () => void }) {
  return (
    <>
      <p role="alert" className="wrong">
        {says}
      </p>
      <p className="actions">
        <Button className="button main" onPress={ask}>
          {DOOR.askAgain}
        </Button>
      </p>
    </>
  );
}

function SignedIn({ says, keeper }: { readonly says: string; readonly keeper: Doorkeeper }) {
  return (
    <p className="actions">
      <span>{says}</span>
      <Button className="button" onPress={() => keeper.signOut()}>
        {DOOR.signOut}
      </Button>
    </p>
  );
}

function Attended({ keeper, children }: { readonly keeper: Doorkeeper; readonly children: ReactNode }) {
  const { signOut, stay } = keeper;
  const soon = useUnattended({ leave: () => signOut(DOOR.unattended), stay });
  return (
    <>
      <p role="alert" className={soon ? 'wrong' : ''}>
        {soon && DOOR.soon}
      </p>
      {children}
    </>
  );
}

export interface InsideProps {
  readonly guest: Guest;
  readonly keeper: Doorkeeper;
}

interface DoorProps {
  readonly keeper: Doorkeeper;
  /** Who is in, in a sentence. */
  readonly who: (guest: Guest, stage: 'first' | 'other' | 'in') => string;
  readonly inside: ComponentType<InsideProps>;
  /** For those to whom it does not open; nothing besides who they are where absent. */
  readonly other?: ComponentType<InsideProps>;
}

export function Behind({ keeper, who, inside, other }: DoorProps) {
  const { door } = keeper;
  const Shown = door.is === 'in' ? inside : other;
  useLandOnHead(door.is);
  switch (door.is) {
    case 'asking':
      return <output className="waiting">{DOOR.asking}</output>;
    case 'shut':
      return <Shut says={door.says} ask={keeper.ask} />;
    case 'out':
      return <SignIn note={door.note} signIn={keeper.signIn} says={keeper.says} />;
    default:
      return (
        <div key={door.account.id}>
          <SignedIn says={who(door, door.is)} keeper={keeper} />
          {door.is === 'first' && (
            <OwnPassword
              name={door.account.name}
              words={SIGN_IN.first}
              change={keeper.changePassword}
              says={keeper.says}
            />
          )}
          {door.is !== 'first' && Shown && (
            <Attended keeper={keeper}>
              <Shown guest={door} keeper={keeper} />
            </Attended>
          )}
        </div>
      );
  }
}
