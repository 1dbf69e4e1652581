// Where the steps come from and where a found order goes: a procedure of the library, which is copied into a new draft, or a
// draft, which takes it as one more edit. Either way undo gives the steps back that there were.
import { useMemo, useState } from 'react';
import type { Procedure } from '../../domain/procedure.ts';
import { readProcedure } from '../../language/index.ts';
import { asCopy, fileNameOf, textOf } from '../compose/model/draft.ts';
import { drafts, useDraft } from '../compose/store/useDrafts.ts';
import { useEntry } from '../library.ts';
import { withPins } from './model/pins.ts';

export interface Source {
  readonly title: string;
  /** Address of the page it was reached from. */
  readonly home: string;
  readonly isDraft: boolean;
  /** What is searched, with its pins; undefined while the text has errors. */
  readonly procedure: Procedure | undefined;
  readonly pin: (ids: ReadonlySet<string>) => void;
  /** Id of the draft that now holds it. */
  readonly take: (found: Procedure, done: string) => string;
}

/** A procedure of the library or an opened one. Pins live as long as the page, and go with it into a draft. */
export function useLibrarySource(id: string): Source | undefined {
  const entry = useEntry(id);
  const read = useMemo(() => entry && readProcedure(entry.text, entry.fileName).procedure, [entry]);
  const [pins, pin] = useState<ReadonlySet<string> | undefined>();
  const procedure = useMemo(() => read && (pins ? withPins(read, pins) : read), [read, pins]);
  if (!entry) return undefined;
  return {
    title: entry.title,
    home: `/procedure/${id}/steps`,
    isDraft: false,
    procedure,
    pin,
    take: (found, done) => {
      const copy = asCopy(procedure ?? found);
      const draft = drafts.create(copy, 'Copied');
      drafts.apply(draft, { do: 'edit', procedure: { ...found, title: copy.title }, done });
      return draft;
    },
  };
}

const isWhole = (draft: Procedure): boolean =>
  readProcedure(textOf(draft), fileNameOf(draft)).diagnostics.every(({ severity }) => severity !== 'error');

/** A draft: a pin is an edit of it like any other. */
export function useDraftSource(id: string): Source | undefined {
  const present = useDraft(id)?.history.present.procedure;
  const procedure = useMemo(() => (present && isWhole(present) ? present : undefined), [present]);
  if (!present) return undefined;
  return {
    title: present.title,
    home: `/write/${id}/steps`,
    isDraft: true,
    procedure,
    pin: (ids) =>
      drafts.apply(id, {
        do: 'edit',
        procedure: withPins(present, ids),
        done: ids.size > 0 ? `Keep steps in place: ${ids.size}` : 'Keep no step in place',
        merge: 'pins',
      }),
    take: (found, done) => {
      drafts.apply(id, { do: 'edit', procedure: found, done });
      return id;
    },
  };
}
