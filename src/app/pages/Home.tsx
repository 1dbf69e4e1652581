// The first page: what this is, what it is not, and the procedures; the invented unit's is checked at once, so that its
// faults are seen before anything is chosen.
import { Link } from 'wouter';
import { useCheck } from '../check/client.ts';
import { type Entry, LIBRARY, questionFor, useOpened, useVersionEntries } from '../library.ts';
import { choiceFrom, limitsFor, shownFor, worstWalk } from '../model/findings.ts';
import { OpenFile } from '../parts/OpenFile.tsx';
import { Summary } from '../findings/Summary.tsx';
import { FindingRow } from '../findings/FindingRow.tsx';
import { useTitle } from '../parts/useTitle.ts';
import { words } from '../words.ts';
import { Waiting } from '../parts/Waiting.tsx';

function ProcedureItem({ entry }: { readonly entry: Entry }) {
  return (
    <li className="procedure">
      <h3>
        <Link href={`/procedure/${entry.id}/steps`}>{entry.title}</Link>
      </h3>
      <p className="tags">
        <span className="badge">{entry.kind}</span>
        {entry.version && entry.invented && entry.stage === undefined && (
          <span className="badge">version {entry.version}</span>
        )}
        {entry.stage !== undefined && (
          <span className="badge stage">
            version {entry.version ?? '?'}: {entry.stage}
          </span>
        )}
        {entry.invented && <span className="badge invented">Invented, for demonstration</span>}
        {entry.opened && <span className="badge">Opened from this machine: {entry.fileName}</span>}
      </p>
      {entry.source && !entry.invented && <p className="quiet source">After: {entry.source}</p>}
    </li>
  );
}

function Procedures({ entries }: { readonly entries: readonly Entry[] }) {
  return (
    <ul className="procedures">
      {entries.map((entry) => (
        <ProcedureItem key={entry.id} entry={entry} />
      ))}
    </ul>
  );
}

function Demo({ entry }: { readonly entry: Entry }) {
  const progress = useCheck(questionFor(entry));
  const judged = progress.result?.judged;
  const choice = choiceFrom(null, judged?.procedure.agents ?? []);
  const shown = judged ? shownFor(judged.findings, choice) : [];
  const worst = worstWalk(shown);
  return (
    <section className="demo" aria-labelledby="demo-title">
      <p className="tags">
        <span className="badge invented">Invented, for demonstration</span>
        <span className="badge">{entry.kind}</span>
      </p>
      <h2 id="demo-title">
        <Link href={`/procedure/${entry.id}/steps`}>{entry.title}</Link>
      </h2>
      {entry.about && <p>{entry.about}</p>}
      <Waiting progress={progress} />
      {judged && (
        <>
          <Summary
            shown={shown}
            title="What the check finds in it"
            level={3}
            complete={progress.result?.complete ?? false}
            limits={limitsFor(judged.limits, choice)}
          />
          <ul className="rows">
            {shown.slice(0, 4).map((one) => (
              <FindingRow key={one.key} id={entry.id} shown={one} procedure={judged.procedure} />
            ))}
          </ul>
        </>
      )}
      <p className="actions">
        <Link href={`/procedure/${entry.id}/steps`} className="button main">
          Open its steps
        </Link>
        {worst && (
          <Link href={`/procedure/${entry.id}/finding/${worst.key}`} className="button">
            Walk its worst route
          </Link>
        )}
      </p>
    </section>
  );
}

export function Home() {
  const opened = useOpened();
  useTitle('');
  const inForce = useVersionEntries().filter(({ stage }) => stage === 'approved, in force');
  const [demo, ...rest] = LIBRARY;
  const own = rest.filter((entry) => entry.invented);
  const published = rest.filter((entry) => !entry.invented);
  return (
    <div className="home">
      <h1>Which step is one slip away from bare skin?</h1>
      <p className="lead">
        Doffline reads a unit’s doffing or donning procedure, works out what every step touches, and shows
        where contamination can get to skin, mucosa, underclothes or the clean side: though nobody slips, or
        with how many slips. Each finding shows its route step by step, and the mends that were tried.
      </p>
      <ul className="plain caution-box" aria-label="Before you use it">
        {words.cautions.map((caution) => (
          <li key={caution}>{caution}</li>
        ))}
      </ul>
      {inForce.length > 0 && (
        <section aria-labelledby="force-title">
          <h2 id="force-title">In force in this unit</h2>
          <Procedures entries={inForce} />
          <p>
            <Link href="/versions">Every version</Link>
          </p>
        </section>
      )}
      {demo && <Demo entry={demo} />}
      <section aria-labelledby="open-title">
        <h2 id="open-title">Your own procedure</h2>
        <p className="actions">
          <Link href="/write" className="button main">
            Write a new one
          </Link>
          <span className="quiet">Step by step, checked as you write. Or open a file that you have:</span>
        </p>
        <OpenFile />
        {opened && <Procedures entries={[opened]} />}
      </section>
      {own.length > 0 && (
        <section aria-labelledby="own-title">
          <h2 id="own-title">More of the invented unit</h2>
          <Procedures entries={own} />
        </section>
      )}
      <section aria-labelledby="published-title">
        <h2 id="published-title">After published procedures</h2>
        <p>
          Readings of public text for study, with their sources; not approved procedures. What was read and
          what was interpreted stands in each.
        </p>
        <Procedures entries={published.filter((entry) => entry.kind === 'doffing')} />
        <details>
          <summary>Their donnings</summary>
          <Procedures entries={published.filter((entry) => entry.kind === 'donning')} />
        </details>
      </section>
    </div>
  );
}
