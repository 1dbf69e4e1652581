// Where the guide begins: exits that are still open first, then a new one, then those that ended.
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { memberText } from '../../../versions/staff.ts';
import { useBook } from '../../journal/useBook.ts';
import { useTitle } from '../../parts/useTitle.ts';
import { type ExitHead, openExits } from '../log/exits.ts';
import { exitsNow } from '../shell/rooms.ts';
import { StartForm } from './StartForm.tsx';

/** Undefined until they are read. */
function useExits(): readonly ExitHead[] | undefined {
  const { entries, is } = useBook();
  const now = is === 'ready' ? entries : undefined;
  const [exits, setExits] = useState<readonly ExitHead[]>();
  useEffect(() => {
    if (now === undefined) return undefined;
    let current = true;
    exitsNow().then(
      (state) => current && setExits(Object.values(state).toSorted((a, b) => b.from - a.from)),
      () => current && setExits([]),
    );
    return () => {
      current = false;
    };
  }, [now]);
  return exits;
}

const when = (at: string): string => new Date(at).toLocaleString();

function ExitRow({ head, children }: { readonly head: ExitHead; readonly children: React.ReactNode }) {
  const { staff } = useBook();
  return (
    <li className="procedure">
      <b>{head.drill ? 'Drill' : 'Exit'}</b> {head.procedure}, version {head.version}; room {head.room};{' '}
      {when(head.at)}; wearer {memberText(staff, head.wearer)}, observer {memberText(staff, head.observer)}
      <p className="actions">{children}</p>
    </li>
  );
}

function OpenList({ exits }: { readonly exits: readonly ExitHead[] }) {
  return (
    <ul className="plain">
      {exits.map((head) => (
        <ExitRow key={head.exit} head={head}>
          <Link href={`/guide/${head.exit}`} className="button main">
            Go on where it stands
          </Link>
        </ExitRow>
      ))}
    </ul>
  );
}

/** Offered at once on every page after a reload or a crash. */
export function OpenBanner() {
  const exits = useExits();
  const open = exits?.filter(({ ended }) => ended === null) ?? [];
  if (open.length === 0) return null;
  return (
    <section className="g-banner" aria-label="Open exits">
      <h2>Not ended yet</h2>
      <OpenList exits={open} />
    </section>
  );
}

export function GuideHome({
  chosen,
  after,
}: {
  readonly chosen: string | null;
  readonly after: string | null;
}) {
  const exits = useExits();
  useTitle('Guide');
  const ended = exits?.filter((head) => head.ended !== null) ?? [];
  const open = openExits(Object.fromEntries((exits ?? []).map((head) => [head.exit, head])));
  return (
    <div className="narrow g-home">
      <h1>Guide an exit or a drill</h1>
      {open.length > 0 && (
        <section aria-labelledby="open-exits">
          <h2 id="open-exits">Not ended yet</h2>
          <OpenList exits={open} />
        </section>
      )}
      <StartForm chosen={chosen} after={after} />
      {ended.length > 0 && (
        <section aria-labelledby="ended-exits">
          <h2 id="ended-exits">Ended</h2>
          <ul className="plain">
            {ended.map((head) => (
              <ExitRow key={head.exit} head={head}>
                <Link href={`/guide/${head.exit}/record`} className="button">
                  Its record
                </Link>
              </ExitRow>
            ))}
          </ul>
        </section>
      )}
    </div>
  );
}
