// The page: a header, the place one is at, and the cautions below every one of them.
import { useEffect, useRef } from 'react';
import { Link, Route, Switch, useLocation } from 'wouter';
import { ComparePage } from './pages/ComparePage.tsx';
import { EvidencePage } from './pages/EvidencePage.tsx';
import { Home } from './pages/Home.tsx';
import { NotFound } from './pages/NotFound.tsx';
import { ProcedurePage } from './pages/ProcedurePage.tsx';
import { WriteHome } from './compose/WriteHome.tsx';
import { WritePage } from './compose/WritePage.tsx';
import { DevicePage } from './offline/DevicePage.tsx';
import { Notices } from './offline/Notices.tsx';
import { ExitPage } from './sync/ExitPage.tsx';
import { fillsWindow, GuideRoutes, WholeWindow } from './guide/GuideRoutes.tsx';
import { OpenBanner } from './guide/screens/GuideHome.tsx';
import { HealthPage } from './health/HealthPage.tsx';
import { HEALTH } from './health/labels.ts';
import { OrderPage } from './order/OrderPage.tsx';
import { UNIT } from './unit/labels.ts';
import { UnitPage } from './unit/UnitPage.tsx';
import { Standing } from './parts/Standing.tsx';
import { JournalPage } from './journal/JournalPage.tsx';
import { LookBanner } from './logbook/LookBanner.tsx';
import { LogbookRoutes } from './logbook/LogbookRoutes.tsx';
import { ChooseLanguage } from './languages/Choose.tsx';
import { LanguageNote } from './languages/LanguageNote.tsx';
import { LanguagePage } from './languages/LanguagePage.tsx';
import { LanguagesPage } from './languages/LanguagesPage.tsx';
import { today } from './today.ts';
import { VersionRoutes } from './versions/VersionRoutes.tsx';
import { useSpoken, words } from './words.ts';

function Header() {
  const [place] = useLocation();
  const current = (path: string) =>
    place === path || (path !== '/' && place.startsWith(path)) ? ({ 'aria-current': 'page' } as const) : {};
  return (
    <header className="top">
      <a className="skip" href="#main">
        Skip to the content
      </a>
      <Link href="/" className="brand">
        Doffline
      </Link>
      <nav className="tabs" aria-label="Main">
        <Link href="/" {...current('/')}>
          Procedures
        </Link>
        <Link href="/compare" {...current('/compare')}>
          Compare
        </Link>
        <Link href="/write" {...current('/write')}>
          Write
        </Link>
        <Link href="/guide" {...current('/guide')}>
          Guide
        </Link>
        <Link href="/logbook" {...current('/logbook')}>
          Logbook
        </Link>
        <Link href="/versions" {...current('/versions')}>
          Versions
        </Link>
        <Link href="/evidence" {...current('/evidence')}>
          Evidence
        </Link>
        <Link href="/device" {...current('/device')}>
          This device
        </Link>
      </nav>
      <ChooseLanguage />
    </header>
  );
}

function Footer() {
  return (
    <footer className="cautions">
      <nav className="more-places" aria-label="More">
        <Link href="/journal">Journal</Link>
        <Link href="/languages">Languages</Link>
        <Link href="/unit">{UNIT.link}</Link>
        <Link href="/health-records">{HEALTH.link}</Link>
      </nav>
      <h2>Cautions</h2>
      <ul>
        {words.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
    </footer>
  );
}

/** A new place is read from its top, by eye and by screen reader. */
function useFreshStart() {
  const [place] = useLocation();
  const main = useRef<HTMLElement>(null);
  const last = useRef(place);
  useEffect(() => {
    if (last.current === place) return;
    last.current = place;
    // An address with a step in it scrolls to that step by itself.
    if (!new URLSearchParams(window.location.search).has('step')) window.scrollTo(0, 0);
    main.current?.focus({ preventScroll: true });
  }, [place]);
  return main;
}

function Page() {
  const main = useFreshStart();
  const [place] = useLocation();
  // Another language, and the page is drawn anew: nothing said before stays.
  const { key } = useSpoken();
  return (
    <>
      <Header />
      <Notices />
      <LanguageNote />
      <OpenBanner />
      <LookBanner />
      <main id="main" ref={main} tabIndex={-1}>
        <Standing place={place}>
          <Switch key={key}>
            <Route path="/">
              <Home />
            </Route>
            <Route path="/compare">
              <ComparePage />
            </Route>
            <Route path="/write">
              <WriteHome />
            </Route>
            <Route<Readonly<Record<'id' | 'view', string | undefined>>> path="/write/:id/:view?">
              {({ id = '', view = 'steps' }) => <WritePage id={id} view={view} />}
            </Route>
            <Route<
              Readonly<Record<'from' | 'id' | 'view', string | undefined>>
            > path="/order/:from/:id/:view?">
              {({ from = '', id = '', view = 'search' }) => <OrderPage from={from} id={id} view={view} />}
            </Route>
            <Route path="/versions/*?">
              <VersionRoutes />
            </Route>
            <Route path="/journal">
              <JournalPage />
            </Route>
            <Route path="/languages">
              <LanguagesPage />
            </Route>
            <Route<Readonly<Record<'tag', string | undefined>>> path="/languages/:tag">
              {({ tag = '' }) => <LanguagePage tag={tag} today={today()} />}
            </Route>
            <Route path="/guide/*?">
              <GuideRoutes />
            </Route>
            <Route path="/logbook/*?">
              <LogbookRoutes />
            </Route>
            <Route path="/evidence">
              <EvidencePage />
            </Route>
            <Route path="/unit">
              <UnitPage />
            </Route>
            <Route path="/health-records">
              <HealthPage />
            </Route>
            <Route path="/device">
              <DevicePage />
            </Route>
            <Route<Readonly<Record<'exit', string>>> path="/device/exit/:exit">
              {({ exit }) => <ExitPage exit={exit} />}
            </Route>
            <Route<
              Readonly<Record<'id' | 'view' | 'key', string | undefined>>
            > path="/procedure/:id/:view?/:key?">
              {({ id = '', view = 'steps', key }) => <ProcedurePage id={id} view={view} findingKey={key} />}
            </Route>
            <Route>
              <NotFound />
            </Route>
          </Switch>
        </Standing>
      </main>
      <Footer key={key} />
    </>
  );
}

/** The guide at the bedside fills the window: nothing stands beside the line. */
export function App() {
  const [place] = useLocation();
  return <Standing place={place}>{fillsWindow(place) ? <WholeWindow /> : <Page />}</Standing>;
}
