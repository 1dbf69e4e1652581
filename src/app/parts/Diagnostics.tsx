// What is wrong in a procedure file: line and column, the line itself, what is wrong and how to mend it.
import { type Diagnostic, describeDiagnostic } from '../../language/diagnostics.ts';

interface DiagnosticsProps {
  readonly diagnostics: readonly Diagnostic[];
  readonly text: string;
}

function One({ diagnostic, line }: { readonly diagnostic: Diagnostic; readonly line: string }) {
  const { wrong, mend } = describeDiagnostic(diagnostic);
  const { severity, line: at, column } = diagnostic;
  const length = diagnostic.endLine === at ? Math.max(1, diagnostic.endColumn - column) : 1;
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
          {line.slice(0, column - 1)}
          <mark>{line.slice(column - 1, column - 1 + length)}</mark>
          {line.slice(column - 1 + length)}
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
            key={`${one.line}:${one.column}:${one.code}`}
            diagnostic={one}
            line={lines[one.line - 1] ?? ''}
          />
        ))}
      </ol>
    </section>
  );
}
