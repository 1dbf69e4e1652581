// The addresses of the guide. What is read at the bedside fills the window; what is filled in and read afterwards stands in
// the page like everything else.
import { Route, Switch, useSearchParams } from 'wouter';
import { GuideHome } from './screens/GuideHome.tsx';
import { GuidePage } from './screens/GuidePage.tsx';
import { RecordPage } from './screens/RecordPage.tsx';
import { TimesPage } from './screens/TimesPage.tsx';
import { UnitPage } from './screens/UnitPage.tsx';

/** Whether an address is one of the guide's that fill the window. */
export const fillsWindow = (place: string): boolean =>
  /^\/guide\/(?!(?:unit|times)$)[^/]+(\/display(\/[^/]+)?)?\/?$/.test(place);

export function WholeWindow() {
  return (
    <Route<Readonly<Record<'exit' | 'view' | 'role', string | undefined>>> path="/guide/:exit/:view?/:role?">
      {({ exit = '', view, role }) => <GuidePage exit={exit} view={view} role={role} />}
    </Route>
  );
}

export function GuideRoutes() {
  const [params] = useSearchParams();
  return (
    <Switch>
      <Route path="/guide/unit">
        <UnitPage />
      </Route>
      <Route path="/guide/times">
        <TimesPage />
      </Route>
      <Route<Readonly<Record<'exit', string | undefined>>> path="/guide/:exit/record">
        {({ exit = '' }) => <RecordPage key={exit} exit={exit} />}
      </Route>
      <Route path="/guide">
        <GuideHome chosen={params.get('procedure')} after={params.get('after')} />
      </Route>
    </Switch>
  );
}
