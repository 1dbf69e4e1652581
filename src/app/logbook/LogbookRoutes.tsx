// The addresses of the logbook: who is in now first; everything else one press away.
import type { ReactNode } from 'react';
import { Link, Route, Switch, useLocation } from 'wouter';
import type { Stay } from '../../journal/views/stay.ts';
import { memberText } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { NotFound } from '../pages/NotFound.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { DayPage } from './DayPage.tsx';
import { LOG } from './labels.ts';
import { clock, roomName } from './model.ts';
import { NowPage } from './NowPage.tsx';
import { SignIn } from './SignIn.tsx';
import { useClock, useLogbook } from './useLogbook.ts';
import { ChangeObserver, Correct, SignOut } from './VisitForms.tsx';
import { WithPage } from './WithPage.tsx';

const PLACES = [
  { href: '/logbook', name: LOG.places.now },
  { href: '/logbook/in', name: LOG.places.in },
  { href: '/logbook/day', name: LOG.places.day },
  { href: '/logbook/with', name: LOG.places.with },
] as const;

function Page({ title, children }: { readonly title: string; readonly children: ReactNode }) {
  const [place] = useLocation();
  useTitle(title);
  return (
    <div className="log-page">
      <h1>{title}</h1>
      <nav className="tabs log-places no-print" aria-label={LOG.title}>
        {PLACES.map(({ href, name }) => (
          <Link key={href} href={href} {...(place === href ? { 'aria-current': 'page' as const } : {})}>
            {name}
          </Link>
        ))}
      </nav>
      {children}
      <p className="quiet no-print">{LOG.health}</p>
    </div>
  );
}

const FORMS = {
  out: { title: LOG.acts.out, form: SignOut },
  observer: { title: LOG.acts.observer, form: ChangeObserver },
  correct: { title: LOG.acts.correct, form: Correct },
} as const;

interface OfVisitProps {
  readonly act: keyof typeof FORMS;
  readonly visit: string;
  readonly stays: readonly Stay[];
}

function OfVisit({ act, visit, stays }: OfVisitProps) {
  const { staff } = useBook();
  const now = useClock();
  const stay = stays.find((one) => one.visit === visit);
  if (!stay) return <NotFound />;
  const { title, form: Form } = FORMS[act];
  const since = stay.entered === null ? '' : `, in ${clock(stay.entered, now)}`;
  return (
    <Page title={`${title}: ${memberText(staff, stay.person)}`}>
      <p className="lead">
        {roomName(stay.room)}
        {since}
      </p>
      <Form key={`${act} ${visit}`} stay={stay} />
    </Page>
  );
}

export function LogbookRoutes() {
  const { stays, wrong } = useLogbook();
  if (wrong !== '') return <p role="alert">{wrong}</p>;
  if (!stays) return <output className="waiting">{LOG.reading}</output>;
  return (
    <Switch>
      <Route path="/logbook">
        <Page title={LOG.places.now}>
          <NowPage stays={stays} />
        </Page>
      </Route>
      <Route path="/logbook/in">
        <Page title={LOG.places.in}>
          <SignIn stays={stays} />
        </Page>
      </Route>
      <Route path="/logbook/day">
        <Page title={LOG.places.day}>
          <DayPage stays={stays} />
        </Page>
      </Route>
      <Route path="/logbook/with">
        <Page title={LOG.places.with}>
          <WithPage stays={stays} />
        </Page>
      </Route>
      {(['out', 'observer', 'correct'] as const).map((act) => (
        <Route<Readonly<Record<'visit', string | undefined>>> key={act} path={`/logbook/${act}/:visit`}>
          {({ visit = '' }) => <OfVisit act={act} visit={visit} stays={stays} />}
        </Route>
      ))}
      <Route>
        <NotFound />
      </Route>
    </Switch>
  );
}
