// Where the guide begins: exits that are still open first, then a new one, then those that ended.
import { Link } from 'wouter';
import { initialsOf } from '../../../versions/staff.ts';
import { useBook } from '../../journal/useBook.ts';
import { useTitle } from '../../parts/useTitle.ts';
import { momentText } from '../../parts/moment.ts';
import { roomName } from '../../logbook/model.ts';
import { procedureTitle } from '../../model/titles.ts';
import { type ExitHead, openExits } from '../log/exits.ts';
import { StartForm } from './StartForm.tsx';
import { useExits } from './useExits.ts';

function ExitRow({ head, children }: { readonly head: ExitHead; readonly children: React.ReactNode }) {
  const { staff, texts } = useBook();
  return (
    <li className="procedure">
      <b>{head.drill ? 'Drill' : 'Exit'}</b> {procedureTitle(head, texts)}, version {head.version};{' '}
      {roomName(head.room)}; {momentText(head.at)}; wearer {initialsOf(staff, head.wearer)}, observer{' '}
      {initialsOf(staff, head.observer)}
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
