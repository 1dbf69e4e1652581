// The published document that the draft follows: what was read there, what is from memory, what was interpreted.
import { Button } from 'react-aria-components';
import type { ProcedureSource } from '../../../domain/procedure.ts';
import { LONGEST } from '../../../domain/lengths.ts';
import type { Editing } from '../editing.ts';
import { changeSource, NEW_SOURCE, withoutSource } from '../model/rules.ts';
import { TextLine } from '../parts.tsx';

interface Field {
  readonly field: keyof ProcedureSource;
  readonly label: string;
  readonly most: number;
  readonly long?: boolean;
}

const FIELDS: readonly Field[] = [
  { field: 'title', label: 'Title of the document', most: LONGEST.label },
  { field: 'publisher', label: 'Who published it', most: LONGEST.label },
  { field: 'year', label: 'Year (may stay empty)', most: LONGEST.label },
  { field: 'where', label: 'Page, section or address (may stay empty)', most: LONGEST.text },
  { field: 'seen', label: 'What was read at the source', most: LONGEST.text, long: true },
  { field: 'memory', label: 'What is from memory (may stay empty)', most: LONGEST.text, long: true },
  { field: 'interpreted', label: 'What we interpreted (may stay empty)', most: LONGEST.text, long: true },
];

export function Source({ draft, edit }: Editing) {
  const { source } = draft;
  return (
    <section aria-labelledby="source-title">
      <h2 id="source-title">Source</h2>
      {source === undefined ? (
        <>
          <p>It follows no published document.</p>
          <p className="actions">
            <Button
              className="button"
              onPress={() => edit({ ...draft, source: NEW_SOURCE }, 'Name a source')}
            >
              Name its source
            </Button>
          </p>
        </>
      ) : (
        <>
          <div className="fields">
            {FIELDS.map(({ field, label, most, long = false }) => (
              <TextLine
                key={field}
                label={label}
                long={long}
                most={most}
                value={source[field] ?? ''}
                set={(text) => edit(changeSource(draft, field, text), 'Change the source', `source-${field}`)}
              />
            ))}
          </div>
          <p className="actions">
            <Button className="button" onPress={() => edit(withoutSource(draft), 'Remove the source')}>
              It follows no document
            </Button>
          </p>
        </>
      )}
    </section>
  );
}
