// What the file of the draft still lacks, in words, with the way to the step.
import { Button } from 'react-aria-components';
import type { Procedure } from '../../domain/procedure.ts';
import { type Diagnostic, describeDiagnostic } from '../../language/index.ts';
import type { Checked } from './checked.ts';

interface UnfinishedProps {
  readonly draft: Procedure;
  readonly checked: Checked;
  readonly choose: (id: string) => void;
}

export function Unfinished({ draft, checked, choose }: UnfinishedProps) {
  const { diagnostics = [], lines } = checked;
  const errors = diagnostics.filter(({ severity }) => severity === 'error');
  if (errors.length === 0) return null;
  const stepOf = ({ line }: Diagnostic): string | undefined =>
    [...(lines ?? [])].find(([, span]) => span.line <= line && line <= span.endLine)?.[0];
  return (
    <section className="diagnostics" aria-labelledby="unfinished-title">
      <h2 id="unfinished-title">Not finished: {errors.length} to settle before it can be checked</h2>
      <ol>
        {errors.map((one) => {
          const { wrong, mend } = describeDiagnostic(one);
          const id = stepOf(one);
          const at = draft.steps.findIndex((step) => step.id === id);
          return (
            <li key={`${one.line}:${one.column}:${one.code}`} className="diagnostic severity-error">
              <p>
                {wrong} {mend}
              </p>
              {id !== undefined && at >= 0 && (
                <Button className="button" onPress={() => choose(id)}>
                  Go to step {at + 1}
                </Button>
              )}
            </li>
          );
        })}
      </ol>
    </section>
  );
}
