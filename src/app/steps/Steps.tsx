// The steps in order, each with its findings beside it, and the picture of the chosen step. On a wide screen the picture
// stands beside the list, on a narrow one under the chosen step.
import { useEffect, useRef, useState } from 'react';
import { useSearchParams } from 'wouter';
import { Filters } from '../findings/Filters.tsx';
import { FindingRow } from '../findings/FindingRow.tsx';
import { Summary } from '../findings/Summary.tsx';
import { byStep, everything, limitsFor, passes, type Shown } from '../model/findings.ts';
import type { ViewProps } from '../view.ts';
import { useWide } from '../parts/useWide.ts';
import { words } from '../words.ts';
import { StepPicture } from './StepPicture.tsx';

/** The chosen step stands in the address, counted from 1 as on the screen. */
function useStep(count: number): readonly [number, (step: number) => void, string | undefined] {
  const [params, setParams] = useSearchParams();
  const wanted = Number(params.get('step') ?? 1) - 1;
  const step = Number.isInteger(wanted) ? Math.min(Math.max(wanted, 0), Math.max(count - 1, 0)) : 0;
  const choose = (next: number) =>
    setParams(
      (before) => {
        before.set('step', String(next + 1));
        before.delete('surface');
        return before;
      },
      { replace: true },
    );
  return [step, choose, params.get('surface') ?? undefined];
}

interface StepItemProps extends ViewProps {
  readonly index: number;
  readonly chosen: boolean;
  readonly choose: (step: number) => void;
  readonly findings: readonly Shown[];
  readonly wide: boolean;
  readonly surface: string | undefined;
}

function StepItem({ index, chosen, choose, findings, wide, surface, ...view }: StepItemProps) {
  const { procedure } = view.judged;
  const step = procedure.steps[index];
  if (!step) return null;
  const errors = findings.filter(({ finding }) => finding.severity === 'error' && !finding.accepted).length;
  const marks = [
    ...(errors > 0 ? [`▲ ${errors}`] : []),
    ...(findings.length > errors ? [`● ${findings.length - errors}`] : []),
  ].join('  ');
  const doer = procedure.people.find((person) => person.id === step.who);
  return (
    <li className={chosen ? 'step chosen' : 'step'} id={`step-${index + 1}`}>
      <button
        type="button"
        className="step-button"
        aria-current={chosen ? 'step' : undefined}
        onClick={() => choose(index)}
      >
        <span className="step-number">{index + 1}</span>
        <span className="step-text">
          {doer && doer.role !== 'wearer' && <b className="doer">{words.person(procedure, doer.id)}: </b>}
          {words.step(procedure, step)}
          {step.note && <span className="quiet note">{step.note}</span>}
        </span>
        {marks && (
          <span className="step-marks" title={`${errors} errors, ${findings.length - errors} notes`}>
            <span aria-hidden="true">{marks}</span>
            <span className="visually-hidden">
              {errors} errors, {findings.length - errors} notes
            </span>
          </span>
        )}
      </button>
      {chosen && !wide && <StepPicture {...view} step={index} choose={choose} surface={surface} />}
      {findings.length > 0 && (
        <StepFindings id={view.id} findings={findings} procedure={procedure} open={chosen} />
      )}
    </li>
  );
}

interface StepFindingsProps {
  readonly id: string;
  readonly findings: readonly Shown[];
  readonly procedure: ViewProps['judged']['procedure'];
  /** All of them, not only the errors. */
  readonly open: boolean;
}

/** Errors always stand beside their step; notes unfold, or open with the chosen step. */
function StepFindings({ id, findings, procedure, open }: StepFindingsProps) {
  const errors = findings.filter(({ finding }) => finding.severity === 'error');
  const notes = findings.filter(({ finding }) => finding.severity !== 'error');
  const rows = (list: readonly Shown[]) => (
    <ul className="rows">
      {list.map((one) => (
        <FindingRow key={one.key} id={id} shown={one} procedure={procedure} />
      ))}
    </ul>
  );
  return (
    <div className="step-findings">
      {errors.length > 0 && rows(errors)}
      {notes.length > 0 && (
        <details key={String(open)} open={open && errors.length === 0}>
          <summary>
            {notes.length} {notes.length === 1 ? 'note' : 'notes'}
          </summary>
          {rows(notes)}
        </details>
      )}
    </div>
  );
}

/** The chosen step is kept in sight; the first time only if the address asked for one. */
function useInSight(step: number): void {
  const last = useRef(new URLSearchParams(window.location.search).has('step') ? -1 : step);
  useEffect(() => {
    if (last.current === step) return;
    last.current = step;
    document.getElementById(`step-${step + 1}`)?.scrollIntoView({ block: 'nearest' });
  }, [step]);
}

export function Steps(props: ViewProps) {
  const { judged, shown, id } = props;
  const { procedure } = judged;
  const [filter, change] = useState(everything);
  const [step, choose, surface] = useStep(procedure.steps.length);
  const wide = useWide();
  useInSight(step);
  const passing = shown.filter((one) => passes(filter, one));
  const grouped = byStep(passing);
  const general = grouped.get(-1) ?? [];
  return (
    <>
      <Summary
        shown={shown}
        title="What the check found"
        level={2}
        complete={props.complete}
        limits={limitsFor(props.judged.limits, props.choice)}
        compact
      />
      <Filters filter={filter} change={change} hidden={shown.length - passing.length} />
      <div className="steps-view">
        <section className="steps-list" aria-labelledby="steps-title">
          <h2 id="steps-title">Steps</h2>
          {general.length > 0 && (
            <StepFindings id={id} findings={general} procedure={procedure} open={false} />
          )}
          <ol className="steps">
            {procedure.steps.map((one, index) => (
              <StepItem
                key={one.id}
                {...props}
                index={index}
                chosen={index === step}
                choose={choose}
                findings={grouped.get(index) ?? []}
                wide={wide}
                surface={surface}
              />
            ))}
          </ol>
        </section>
        {wide && (
          <div className="beside">
            <StepPicture {...props} step={step} choose={choose} surface={surface} />
          </div>
        )}
      </div>
    </>
  );
}
