// What is wrong in a procedure file: line and column, the line itself, what is wrong and how to mend it.
import { shownText } from '../model/shown.ts';
import { type Diagnostic, describeDiagnostic } from '../../language/diagnostics.ts';

interface DiagnosticsProps {
  readonly diagnostics: readonly Diagnostic[];
  readonly text: string;
}

/** Characters shown before the fault, in it and after it: a whole file may stand on one line. */
const NEAR = 120;

/** The line around the fault: what stands before it, the fault, what follows. */
function excerpt(line: string, from: number, length: number): readonly [string, string, string] {
  const start = Math.max(0, from - NEAR);
  const shown = Math.min(length, NEAR);
  const end = from + shown + NEAR;
  return [
    `${start > 0 ? '… ' : ''}${line.slice(start, from)}`,
    line.slice(from, from + shown),
    `${line.slice(from + shown, end)}${end < line.length ? ' …' : ''}`,
  ];
}

function One({ diagnostic, line }: { readonly diagnostic: Diagnostic; readonly line: string }) {
  const { wrong, mend } = describeDiagnostic(diagnostic);
  const { severity, line: at, column } = diagnostic;
  const length = diagnostic.endLine === at ? Math.max(1, diagnostic.endColumn - column) : 1;
  const [before, fault, after] = excerpt(line, column - 1, length).map(shownText);
  return (
    <li className={`diagnostic severity-${severity}`}>
      <p>
        <b>
          Line {at}, column {column}:
        </b>{' '}
        {wrong} {mend && <span className="mend">{mend}</span>}
      </p>
      <pre>
        <code>
          {before}
          <mark>{fault}</mark>
          {after}
        </code>
      </pre>
    </li>
  );
}

export function Diagnostics({ diagnostics, text }: DiagnosticsProps) {
  const lines = text.split(/\r?\n/);
  const errors = diagnostics.filter((one) => one.severity === 'error').length;
  const title =
    errors > 0
      ? `This file cannot be checked yet: ${errors} ${errors === 1 ? 'error' : 'errors'}`
      : `${diagnostics.length} ${diagnostics.length === 1 ? 'note' : 'notes'} on the file`;
  return (
    <section className="diagnostics">
      <h2>{title}</h2>
      <ol>
        {diagnostics.map((one) => (
          <One
            key={`${one.line}:${one.column}:${one.code}:${JSON.stringify(one.params)}`}
            diagnostic={one}
            line={lines[one.line - 1] ?? ''}
          />
        ))}
      </ol>
    </section>
  );
}
