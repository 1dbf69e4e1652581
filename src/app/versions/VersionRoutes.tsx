// The addresses below /versions. What day it is comes in here and goes down as a value.
import { Route, Switch } from 'wouter';
import { NotFound } from '../pages/NotFound.tsx';
import { today } from '../today.ts';
import { DeparturesPage } from './DeparturesPage.tsx';
import { nameIn } from './model.ts';
import { ProcedureVersions } from './ProcedureVersions.tsx';
import { VersionPage } from './VersionPage.tsx';
import { VersionsHome } from './VersionsHome.tsx';

export function VersionRoutes() {
  const day = today();
  return (
    <Switch>
      <Route path="/versions">
        <VersionsHome today={day} />
      </Route>
      <Route path="/versions/departures">
        <DeparturesPage today={day} />
      </Route>
      <Route<Readonly<Record<'procedure', string | undefined>>> path="/versions/:procedure">
        {({ procedure = '' }) => <ProcedureVersions procedure={procedure} />}
      </Route>
      <Route<
        Readonly<Record<'procedure' | 'version', string | undefined>>
      > path="/versions/:procedure/:version/read">
        {({ procedure = '', version = '' }) => (
          <VersionPage
            key={`${procedure}/${version}`}
            procedure={procedure}
            name={nameIn(version)}
            today={day}
          />
        )}
      </Route>
      <Route>
        <NotFound />
      </Route>
    </Switch>
  );
}
