// The findings of a draft with their routes in sentences and the mends that were tried, each applied with one press.
import { useRef } from 'react';
import { Button } from 'react-aria-components';
import type { Edit } from '../../check/edit.ts';
import type { Procedure } from '../../domain/procedure.ts';
import type { Shown } from '../model/findings.ts';
import { SeverityBadge } from '../parts/Badge.tsx';
import { landOn } from '../parts/useLanding.ts';
import { words } from '../words.ts';

interface CardProps {
  readonly shown: Shown;
  /** The draft as it was checked. */
  readonly procedure: Procedure;
  /** Absent while the answer is about an older draft. */
  readonly apply: ((edit: Edit, sentence: string) => void) | undefined;
  readonly complete: boolean;
}

function Mends({ shown, procedure, apply, complete }: CardProps) {
  const { mends, kind } = shown.finding;
  if (mends.length === 0) {
    const mendable = ['open', 'one-slip', 'practice', 'impossible'].includes(kind);
    if (!mendable) return null;
    return (
      <p className="quiet">
        {complete ? 'None of the mends that this check tries makes it better.' : 'Mends are being tried …'}
      </p>
    );
  }
  return (
    <ol className="mends plain" aria-label="Mends that were tried">
      {mends.map((mend) => {
        const { sentence, changes } = words.mend(procedure, mend);
        return (
          <li key={sentence} className="mend-choice">
            <p>
              <b>{sentence}</b>
            </p>
            <details>
              <summary>What it changes ({changes.length})</summary>
              <ul>
                {changes.map((change) => (
                  <li key={change}>{change.replaceAll('->', '→')}</li>
                ))}
              </ul>
            </details>
            <Button
              className="button main"
              aria-label={`Apply this mend: ${sentence}`}
              isDisabled={apply === undefined}
              onPress={() => apply?.(mend.edit, sentence)}
            >
              Apply this mend
            </Button>
          </li>
        );
      })}
    </ol>
  );
}

function Card({ open, ...props }: CardProps & { readonly open: boolean }) {
  const { shown, procedure } = props;
  const { finding, agents } = shown;
  const { title, text } = words.finding(procedure, finding);
  const route = words.route(procedure, finding);
  return (
    <li className={`finding kind-${finding.kind}`}>
      <p className="tags">
        <SeverityBadge severity={finding.severity} />
        <span className="badge">{words.findingKind(finding.kind)}</span>
        {agents.length === 1 && agents[0] && <span className="badge">{words.agent(agents[0])}</span>}
        {finding.accepted && <span className="badge">accepted in writing</span>}
      </p>
      <details open={open}>
        <summary>{title}</summary>
        <p>{text}</p>
        {route.length > 0 && (
          <details>
            <summary>Its route ({route.length})</summary>
            <ol>
              {route.map((link) => (
                <li key={link.text}>{link.text}</li>
              ))}
            </ol>
          </details>
        )}
        <Mends {...props} />
      </details>
    </li>
  );
}

interface FindingsProps extends Omit<CardProps, 'shown'> {
  readonly findings: readonly Shown[];
  readonly title: string;
  /** Said where there are none. */
  readonly none: string;
}

/** The first, which is the worst, is open to be read. */
export function Findings({ findings, title, none, apply, ...rest }: FindingsProps) {
  const place = useRef<HTMLHeadingElement>(null);
  const mend =
    apply &&
    ((edit: Edit, sentence: string) => {
      apply(edit, sentence);
      // A mend may leave out the very step, and its findings with it: then the list of steps goes on.
      landOn(() => place.current ?? document.querySelector<HTMLElement>('[role="grid"]'));
    });
  return (
    <section className="draft-findings">
      <h3 ref={place} tabIndex={-1}>
        {title}
      </h3>
      {findings.length === 0 && <p className="quiet">{none}</p>}
      <ul className="rows">
        {findings.map((one, index) => (
          <Card key={one.key} {...rest} apply={mend} shown={one} open={index === 0} />
        ))}
      </ul>
    </section>
  );
}
