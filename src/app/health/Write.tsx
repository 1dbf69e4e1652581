// Writing a record: whose, what it is, and lines of what is recorded. Asked once more before it is kept, because it stays.
import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { HealthRecord } from '../../api/shapes/health.ts';
import { memberText } from '../../versions/staff.ts';
import { useBook } from '../journal/useBook.ts';
import { Typed } from '../logbook/parts.tsx';
import { Confirm } from '../parts/Confirm.tsx';
import { useLanding } from '../parts/useLanding.ts';
import { call } from '../sync/wire.ts';
import {
  type Draft,
  EMPTY_DRAFT,
  type Line,
  lineChanged,
  recordOf,
  withLine,
  withoutLine,
} from './drafts.ts';
import { Labelled } from '../parts/Labelled.tsx';
import { WRITE } from './labels.ts';
import type { PartProps } from './Read.tsx';
import { Whose } from './Whose.tsx';

interface LineProps {
  readonly line: Line;
  readonly at: number;
  readonly set: (change: Partial<Line>) => void;
  readonly remove: () => void;
}

/** Neither the browser's memory of forms nor a spelling service sees what is typed. */
function LineFields({ line, at, set, remove }: LineProps) {
  return (
    <fieldset className="health-line">
      <legend>{WRITE.line(at)}</legend>
      <Typed label={WRITE.name} value={line.name} set={(name) => set({ name })} />
      <Labelled label={WRITE.value}>
        {(tied) => (
          <textarea
            {...tied}
            rows={2}
            value={line.value}
            autoComplete="off"
            spellCheck={false}
            onChange={(event) => set({ value: event.target.value })}
          />
        )}
      </Labelled>
      <Button className="button" aria-label={WRITE.remove(at)} onPress={remove}>
        Take out
      </Button>
    </fieldset>
  );
}

interface FieldsProps {
  readonly draft: Draft;
  readonly set: (draft: Draft) => void;
}

function Fields({ draft, set }: FieldsProps) {
  const { place, land } = useLanding<HTMLDivElement>();
  return (
    <>
      <div className="fields lined">
        <Whose value={draft.person} set={(person) => set({ ...draft, person })} />
        <Typed
          label={WRITE.form}
          value={draft.form}
          set={(form) => set({ ...draft, form })}
          hint={WRITE.formHint}
        />
        <Typed
          label={WRITE.version}
          type="number"
          value={draft.version}
          set={(version) => set({ ...draft, version })}
        />
      </div>
      <div ref={place} tabIndex={-1}>
        {draft.lines.map((line, index) => (
          <LineFields
            key={line.key}
            line={line}
            at={index + 1}
            set={(change) => set(lineChanged(draft, line.key, change))}
            remove={() => {
              set(withoutLine(draft, line.key));
              land();
            }}
          />
        ))}
      </div>
      <p className="actions">
        <Button className="button" onPress={() => set(withLine(draft))}>
          {WRITE.add}
        </Button>
      </p>
    </>
  );
}

export function Write({ met }: PartProps) {
  const { staff } = useBook();
  const [draft, setDraft] = useState(EMPTY_DRAFT);
  const [said, setSaid] = useState('');
  const told = useRef<HTMLOutputElement>(null);
  const made = recordOf(draft);
  const write = async (body: HealthRecord): Promise<void> => {
    const answer = await call('seal-health-record', { body });
    // No answer is no refusal: it may be kept.
    if (answer.is === 'lost') return setSaid(WRITE.unknown);
    if (answer.is === 'refused') throw new Error(met(answer));
    setDraft(EMPTY_DRAFT);
    setSaid(WRITE.kept(answer.body.number));
  };
  const record = typeof made === 'string' ? undefined : made;
  return (
    <section aria-labelledby="health-write">
      <h2 id="health-write">{WRITE.title}</h2>
      <p>{WRITE.says}</p>
      <Fields draft={draft} set={setDraft} />
      <p className="actions">
        <Confirm
          label={WRITE.press}
          title={WRITE.confirm}
          sentence={
            record
              ? WRITE.will(record.form, memberText(staff, record.person), Object.keys(record.record).length)
              : ''
          }
          isDisabled={record === undefined}
          write={async () => (record ? write(record) : undefined)}
          then={told}
        />
        <output className="quiet">{typeof made === 'string' && made}</output>
      </p>
      <output ref={told} tabIndex={-1} className="told">
        {said}
      </output>
    </section>
  );
}
