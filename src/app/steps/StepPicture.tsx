// The picture of the chosen step with what belongs to it: the moment shown, the contacts by number, the same in words.
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { cleanedLines, describePicture } from '../model/describe.ts';
import type { Moment } from '../model/picture.ts';
import { OneOf, Tick } from '../parts/Choices.tsx';
import type { ViewProps } from '../view.ts';
import { Legend } from '../picture/Legend.tsx';
import { numbered, Picture, viewOf } from '../picture/Picture.tsx';
import { words } from '../words.ts';

interface StepPictureProps extends ViewProps {
  readonly step: number;
  readonly choose: (step: number) => void;
  /** A surface to ring, when one came here from the ledger. */
  readonly surface: string | undefined;
}

const MOMENTS = ['before', 'after'] as const satisfies readonly Moment[];
const MOMENT_NAMES: Readonly<Record<Moment, string>> = { before: 'As it begins', after: 'As it ends' };

function Stepper({ step, count, choose }: { step: number; count: number; choose: (step: number) => void }) {
  return (
    <div className="stepper">
      <Button className="button" isDisabled={step === 0} onPress={() => choose(step - 1)}>
        ← Previous step
      </Button>
      <Button className="button" isDisabled={step >= count - 1} onPress={() => choose(step + 1)}>
        Next step →
      </Button>
    </div>
  );
}

export function StepPicture({ judged, board, step, choose, surface }: StepPictureProps) {
  const { procedure } = judged;
  const [moment, setMoment] = useState<Moment>('before');
  const [slips, setSlips] = useState(false);
  const link = surface === undefined ? undefined : { to: surface };
  const question = { procedure, board, step, moment, link, slips };
  const view = viewOf(question);
  const current = procedure.steps[step];
  if (!view || !current) return null;
  const touches = moment === 'before' ? numbered(view, slips) : [];
  const count = procedure.steps.length;
  return (
    <section className="step-picture" aria-label={`Picture of step ${step + 1}`}>
      <div className="picture-bar">
        <b>
          Step {step + 1} of {count}
        </b>
        <OneOf
          label="Moment shown"
          quietLabel
          values={MOMENTS}
          chosen={moment}
          set={setMoment}
          nameOf={(one) => MOMENT_NAMES[one]}
        />
        <Tick on={slips} set={setSlips}>
          Also what a slip touches
        </Tick>
      </div>
      {surface !== undefined && <p className="quiet">Ringed: {words.surface(procedure, surface)}.</p>}
      <Picture {...question} />
      <Legend slips={slips} />
      {touches.length > 0 && (
        <ol className="touches" aria-label="What touches what in this step">
          {touches.map(({ number, a, b, kind }) => (
            <li key={number} value={number}>
              {words.surface(procedure, a)} – {words.surface(procedure, b)}
              {kind === 'slip' && <span className="quiet"> (only by a slip)</span>}
            </li>
          ))}
        </ol>
      )}
      {moment === 'before' &&
        cleanedLines(procedure, view, words).map((line) => (
          <p key={line} className="cleaned-line">
            {line}
          </p>
        ))}
      <details>
        <summary>The picture in words</summary>
        <ul>
          {describePicture(procedure, view, words).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </details>
      <Stepper step={step} count={count} choose={choose} />
    </section>
  );
}
