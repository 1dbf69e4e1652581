// Keeps the second displays of this exit up to date, and hears a stop from them.
import { useEffect, useRef } from 'react';
import { useLight } from '../shell/light.ts';
import { linkOf } from '../shell/link.ts';
import { type DisplayView, displayView, type LinkMessage } from '../shell/view.ts';
import type { Desk } from './desk.ts';
import { actorsOf, stepShown } from './Large.tsx';

const ALIVE = 3000;

export function useDisplays({ run, screen, state }: Desk): void {
  const light = useLight();
  const view = useRef<DisplayView>(undefined);
  useEffect(() => {
    view.current = displayView(screen, state, light, {
      actors: actorsOf(screen, state.shown),
      at: stepShown(screen, state.shown),
    });
    linkOf<LinkMessage>(run.exit).post({ is: 'shown', view: view.current });
  }, [run, screen, state, light]);
  useEffect(() => {
    const link = linkOf<LinkMessage>(run.exit);
    const alive = setInterval(() => link.post({ is: 'here' }), ALIVE);
    const deaf = link.listen((message) => {
      if (message.is === 'hello' && view.current) link.post({ is: 'shown', view: view.current });
      if (message.is !== 'stop') return;
      const { wearer, assistants } = run.state().core.people;
      run.press({ is: 'stop' }, message.role === 'wearer' ? wearer : (assistants[0] ?? null));
    });
    return () => {
      clearInterval(alive);
      deaf();
    };
  }, [run]);
}
