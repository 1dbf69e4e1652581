// One procedure of the unit: which version is in force, and every version with who did what to it and when.
import { Link } from 'wouter';
import { useBook } from '../journal/useBook.ts';
import { NotFound } from '../pages/NotFound.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { fileIn } from './files.ts';
import { History } from './History.tsx';
import { stageText, versionPath, versionsOf } from './model.ts';
import { Opening } from './Opening.tsx';

export function ProcedureVersions({ procedure }: { readonly procedure: string }) {
  const state = useBook();
  const versions = versionsOf(state, procedure);
  const force = versions.find(({ inForce }) => inForce);
  const shown = force ?? versions[0];
  const title = (shown && fileIn(state, shown.version.content)?.title) ?? procedure;
  useTitle(`Versions: ${title}`);
  if (state.is === 'ready' && versions.length === 0) return <NotFound what="This procedure" />;
  return (
    <div className="narrow">
      <h1>{title}</h1>
      <Opening />
      <p className="in-force">
        {force ? (
          <>
            In force:{' '}
            <Link href={versionPath(procedure, force.version.version)}>version {force.version.version}</Link>
          </>
        ) : (
          'No version is in force.'
        )}
      </p>
      <h2>Every version</h2>
      <ul className="rows plain">
        {versions.map((known) => (
          <li key={known.version.version} className="stated">
            <h3>
              <Link href={versionPath(procedure, known.version.version)} className="row-link">
                Version {known.version.version}
              </Link>{' '}
              <span className={`badge stage-${known.version.stage}`}>{stageText(known)}</span>
            </h3>
            <History version={known.version} />
          </li>
        ))}
      </ul>
      <p>
        <Link href="/versions">All procedures</Link>
      </p>
    </div>
  );
}
