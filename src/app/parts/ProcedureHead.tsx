// Title, whether it is invented, where it comes from and what of it was read: on top of every view of a procedure.
import type { ReactNode } from 'react';
import type { Procedure } from '../../domain/procedure.ts';
import type { Entry } from '../library.ts';
import { shownText } from '../model/shown.ts';
import { useTitle } from './useTitle.ts';
import { words } from '../words.ts';

interface ProcedureHeadProps {
  readonly entry: Entry;
  readonly procedure: Procedure | undefined;
  /** Leave out what it is about. */
  readonly brief: boolean;
  /** How far the check is. */
  readonly children: ReactNode;
}

function Source({ procedure }: { readonly procedure: Procedure }) {
  const { source } = procedure;
  if (!source) return <p>No source is given.</p>;
  const parts = [source.title, source.publisher, source.year, source.where].filter(
    (part) => part !== undefined,
  );
  return (
    <>
      <p>{parts.join(', ')}</p>
      <dl>
        <dt>Read at the source</dt>
        <dd>{source.seen}</dd>
        {source.memory !== undefined && (
          <>
            <dt>From memory</dt>
            <dd>{source.memory}</dd>
          </>
        )}
        {source.interpreted !== undefined && (
          <>
            <dt>Interpreted by us</dt>
            <dd>{source.interpreted}</dd>
          </>
        )}
      </dl>
    </>
  );
}

export function ProcedureHead({ entry, procedure, brief, children }: ProcedureHeadProps) {
  useTitle(procedure?.title ?? entry.title);
  return (
    <div className="head">
      <h1>{procedure?.title ?? entry.title}</h1>
      <div className="tags">
        {/* Of an opened file nothing is known before it could be read. */}
        {(procedure || !entry.opened) && (
          <span className="badge">{words.kind(procedure?.kind ?? entry.kind)}</span>
        )}
        {procedure && <span className="badge">version {procedure.version}</span>}
        {(procedure?.invented ?? entry.invented) && (
          <span className="badge invented">Invented, for demonstration</span>
        )}
        {entry.stage !== undefined && <span className="badge stage">{entry.stage}</span>}
        {entry.opened && <span className="badge">Opened from this machine: {shownText(entry.fileName)}</span>}
        {children}
      </div>
      {procedure && (
        <details className="about" open={false}>
          <summary>
            {brief ? 'About this procedure and its source' : 'What it is and where it comes from'}
          </summary>
          {procedure.about && <p>{procedure.about}</p>}
          <Source procedure={procedure} />
        </details>
      )}
    </div>
  );
}
