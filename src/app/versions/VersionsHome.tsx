// All procedures of the unit with the version in force, what waits for review, and what was written without effect.
import { Link } from 'wouter';
import { departureRows } from '../../versions/departures.ts';
import { daysBetween } from '../../versions/days.ts';
import { memberText } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { On } from '../parts/On.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { fileIn } from './files.ts';
import { CONFLICTS, counted, dueText, ENTRY_NAMES, instantText, STAGE_NAMES } from './labels.ts';
import { allVersions, type Known, versionPath, versionsOf } from './model.ts';
import { Opening } from './Opening.tsx';

function InForce({ known, today }: { readonly known: Known | undefined; readonly today: string }) {
  if (!known?.version.approved) return <p>No version is in force.</p>;
  const { version } = known;
  const { on, reviewOn } = version.approved!;
  const days = daysBetween(today, reviewOn);
  return (
    <p>
      In force: <Link href={versionPath(known.procedure, version.version)}>version {version.version}</Link>,
      approved on <On day={on} />, to be looked at again by <On day={reviewOn} />{' '}
      <span className={days < 0 ? 'badge severity-error' : 'badge'}>{dueText(days)}</span>
    </p>
  );
}

function ProcedureCard({ procedure, today }: { readonly procedure: string; readonly today: string }) {
  const state = useBook();
  const versions = versionsOf(state, procedure);
  const force = versions.find(({ inForce }) => inForce);
  const shown = force ?? versions[0];
  const file = shown && fileIn(state, shown.version.content);
  return (
    <li className="procedure">
      <h3>
        <Link href={`/versions/${procedure}`}>{file?.title ?? procedure}</Link>
      </h3>
      <InForce known={force} today={today} />
      <p className="tags">
        {versions.map(({ version }) => (
          <span key={version.version} className={`badge stage-${version.stage}`}>
            {version.version}: {STAGE_NAMES[version.stage]}
          </span>
        ))}
        {file?.invented && <span className="badge invented">Invented, for demonstration</span>}
      </p>
    </li>
  );
}

function Waiting() {
  const state = useBook();
  const waiting = allVersions(state).filter(({ version }) => version.stage === 'review');
  if (waiting.length === 0) return null;
  return (
    <section aria-labelledby="waiting-title">
      <h2 id="waiting-title">Waiting for review</h2>
      <ul className="rows plain">
        {waiting.map(({ procedure, version }) => (
          <li key={`${procedure} ${version.version}`} className="stated">
            <Link href={versionPath(procedure, version.version)} className="row-link">
              {fileIn(state, version.content)?.title ?? procedure}, version {version.version}
            </Link>
            {version.sent && (
              <p className="quiet">
                Sent by {memberText(state.staff, version.sent.by)} on {instantText(version.sent.at)} to{' '}
                {version.sent.to.map((one) => memberText(state.staff, one)).join(', ')}.
              </p>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Conflicts() {
  const { versions, staff } = useBook();
  if (versions.conflicts.length === 0) return null;
  return (
    <section aria-labelledby="conflicts-title">
      <h2 id="conflicts-title">Written, but without effect</h2>
      <ul className="limits">
        {versions.conflicts.map((one) => (
          <li key={one.unitNumber}>
            Entry {one.unitNumber}, {ENTRY_NAMES[one.kind] ?? one.kind} of version {one.version} of{' '}
            {one.procedure} by {memberText(staff, one.by)}, changed nothing: {CONFLICTS[one.code]}.
          </li>
        ))}
      </ul>
    </section>
  );
}

export function VersionsHome({ today }: { readonly today: string }) {
  const state = useBook();
  useTitle('Versions');
  const procedures = Object.keys(state.versions.procedures).toSorted();
  const rows = departureRows(state.versions, (content) => fileIn(state, content), today);
  const overdue = rows.filter((row) => row.overdue).length;
  return (
    <div className="narrow">
      <h1>Versions of the unit’s procedures</h1>
      <p className="lead">
        A draft is sent for review, approved or sent back, and one day retired. What was approved is never
        changed: it can be read, printed, compared and copied into a new draft. Approval is the unit’s own
        judgement; it does not say that a procedure is safe.
      </p>
      <Opening />
      <Waiting />
      <section aria-labelledby="all-title">
        <h2 id="all-title">Procedures</h2>
        {state.is === 'ready' && procedures.length === 0 && (
          <p>
            Nothing was sent for review yet. <Link href="/write">Write a procedure</Link>, and send it from
            its page “Review”.
          </p>
        )}
        <ul className="procedures">
          {procedures.map((procedure) => (
            <ProcedureCard key={procedure} procedure={procedure} today={today} />
          ))}
        </ul>
      </section>
      <section aria-labelledby="accepted-title">
        <h2 id="accepted-title">Accepted in writing</h2>
        <p>
          <Link href="/versions/departures" className="row-link">
            {counted(rows.length, 'accepted departure')}
            {overdue > 0 && `, ${overdue} overdue`}
          </Link>
        </p>
      </section>
      <Conflicts />
      <p>
        <Link href="/journal" className="row-link">
          The journal behind it: {counted(state.entries, 'entry', 'entries')}
        </Link>
      </p>
    </div>
  );
}
