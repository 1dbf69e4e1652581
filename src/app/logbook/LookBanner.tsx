// Above every page: somebody is still signed in long past their limit, whatever page this device shows. The logbook itself says
// it on its cards. Drills hold nobody up.
import { Link, useLocation } from 'wouter';
import { isInside } from '../../journal/views/room.ts';
import { signsOf } from '../../journal/views/signs.ts';
import { LOG } from './labels.ts';
import { boundsNow, useClock, useLogbook } from './useLogbook.ts';

const LOOK: readonly string[] = ['over-limit', 'forgotten'];

export function LookBanner() {
  const [place] = useLocation();
  const { stays = [] } = useLogbook();
  const now = useClock();
  const inside = stays.filter((stay) => isInside(stay) && !stay.drill);
  const signs = signsOf(inside, now, boundsNow());
  const people = signs.filter(({ code }) => LOOK.includes(code)).length;
  if (people === 0 || place.startsWith('/logbook')) return null;
  return (
    <section className="g-banner" aria-label={LOG.title}>
      <p>
        <b>■ {LOG.look(people)}</b>{' '}
        <Link href="/logbook" className="inline-link">
          {LOG.places.now}
        </Link>
      </p>
    </section>
  );
}
