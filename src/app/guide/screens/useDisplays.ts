// Keeps the second displays of this exit up to date, and hears a stop from them.
import { useEffect, useRef } from 'react';
import { useLight } from '../shell/light.ts';
import { linkOf } from '../shell/link.ts';
import { type DisplayView, displayView, type LinkMessage, type Recorded } from '../shell/view.ts';
import type { Desk } from './desk.ts';
import { actorsOf } from './Large.tsx';

const ALIVE = 3000;

/** `pictured`: which picture stands on the observer's own screen, and how it differs from the plan's. */
export function useDisplays({ run, screen, state }: Desk, pictured: Recorded | undefined): void {
  const light = useLight();
  const view = useRef<DisplayView>(undefined);
  useEffect(() => {
    view.current = displayView(screen, state, light, {
      actors: actorsOf(screen, state.shown),
      pictured: pictured ?? null,
    });
    linkOf<LinkMessage>(run.exit).post({ is: 'shown', view: view.current });
  }, [run, screen, state, light, pictured]);
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
