// What is worn: by which approved version, or in own words; sizes and lots item by item, as they stand on the packs. Items come
// from the version's own file; the sizes that somebody wore last are filled in, lots never: they must be read.
import { useMemo } from 'react';
import { Button } from 'react-aria-components';
import type { Bodies } from '../../journal/kinds/index.ts';
import { readProcedure } from '../../language/index.ts';
import { Select, TextLine } from '../compose/parts.tsx';
import { useBook } from '../journal/useBook.ts';
import { words } from '../words.ts';
import { LOG } from './labels.ts';
import type { ItemTyped } from './model.ts';
import { Typed } from './parts.tsx';

type Worn = NonNullable<Bodies['room.entered']['worn']>;

interface Version extends Worn {
  readonly text: string | undefined;
}

/** Approved versions that are not retired, the newest of a procedure first. */
function useApproved(): readonly Version[] {
  const { versions, texts } = useBook();
  return useMemo(
    () =>
      Object.entries(versions.procedures).flatMap(([procedure, all]) =>
        Object.values(all)
          .filter(({ stage }) => stage === 'approved')
          .toSorted((a, b) => (b.approved?.unitNumber ?? 0) - (a.approved?.unitNumber ?? 0))
          .map(({ version, content }) => ({ procedure, version, content, text: texts[content] })),
      ),
    [versions, texts],
  );
}

/** What the wearer of a procedure wears or puts on, in words; nothing where the file is not at hand. */
export function itemsIn(text: string | undefined, fileName: string): readonly string[] {
  const read = text === undefined ? undefined : readProcedure(text, fileName).procedure;
  const wearer = read?.people.find(({ role }) => role === 'wearer');
  if (!read || !wearer) return [];
  const steps = read.steps.filter(({ action, who }) => action === 'put-on' && who === wearer.id);
  const items = [...wearer.wears, ...steps.flatMap((step) => step.items)];
  return [...new Set(items)].map((item) => words.item(item));
}

export interface Equipped {
  readonly worn: Worn | null;
  readonly ensemble: string;
  readonly items: readonly ItemTyped[];
}

interface EquipmentProps {
  readonly equipped: Equipped;
  readonly set: (equipped: Equipped) => void;
  /** Sizes that this person wore last, by item. */
  readonly sizes: ReadonlyMap<string, string>;
}

interface RowsProps {
  readonly items: readonly ItemTyped[];
  /** Items of the chosen version: their names stand. */
  readonly known: ReadonlySet<string>;
  readonly set: (items: readonly ItemTyped[]) => void;
}

interface RowProps {
  readonly row: ItemTyped;
  readonly number: number;
  readonly known: boolean;
  readonly set: (row: ItemTyped) => void;
}

function ItemRow({ row, number, known, set }: RowProps) {
  const name = row.item === '' ? String(number) : row.item;
  const { forms } = LOG;
  return (
    <li className="fields log-item">
      {!known && (
        <TextLine label={`${forms.item} ${number}`} value={row.item} set={(item) => set({ ...row, item })} />
      )}
      <Typed label={forms.size(name)} value={row.size} set={(size) => set({ ...row, size })} />
      <Typed label={forms.lot(name)} value={row.lot} set={(lot) => set({ ...row, lot })} />
    </li>
  );
}

export function ItemRows({ items, known, set }: RowsProps) {
  return (
    <details className="log-items">
      <summary>{LOG.forms.items}</summary>
      <p className="quiet">{LOG.forms.itemsHint}</p>
      <ul className="plain">
        {items.map((row, index) => (
          <ItemRow
            // biome-ignore lint/suspicious/noArrayIndexKey: rows are only ever added at the end
            key={index}
            row={row}
            number={index + 1}
            known={known.has(row.item)}
            set={(now) => set(items.map((other, place) => (place === index ? now : other)))}
          />
        ))}
      </ul>
      <Button className="button" onPress={() => set([...items, { item: '', size: '', lot: '' }])}>
        {LOG.forms.more}
      </Button>
    </details>
  );
}

export function Equipment({ equipped, set, sizes }: EquipmentProps) {
  const approved = useApproved();
  const { worn, ensemble, items } = equipped;
  const chosen = approved.find(({ content }) => content === worn?.content);
  const known = useMemo(() => new Set(chosen ? itemsIn(chosen.text, chosen.procedure) : []), [chosen]);
  const choose = (content: string): void => {
    const version = approved.find((one) => one.content === content);
    if (!version) {
      set({ ...equipped, worn: null });
      return;
    }
    const named = new Map(items.map((row) => [row.item, row]));
    const fresh = itemsIn(version.text, version.procedure).map(
      (item): ItemTyped => named.get(item) ?? { item, size: sizes.get(item) ?? '', lot: '' },
    );
    const kept = items.filter((row) => (row.size !== '' || row.lot !== '') && !fresh.includes(row));
    const { procedure, version: name } = version;
    set({ ...equipped, worn: { procedure, version: name, content }, items: [...fresh, ...kept] });
  };
  return (
    <>
      <div className="fields">
        <Select
          label={LOG.forms.worn}
          value={worn?.content ?? ''}
          none={LOG.forms.wornNone}
          choices={[
            ...approved.map(({ procedure, version, content }) => ({
              value: content,
              name: `${procedure}, version ${version}`,
            })),
            ...(worn && !approved.some(({ content }) => content === worn.content)
              ? [{ value: worn.content, name: `${worn.procedure}, version ${worn.version}` }]
              : []),
          ]}
          set={choose}
        />
        <TextLine
          label={LOG.forms.ensemble}
          value={ensemble}
          set={(typed) => set({ ...equipped, ensemble: typed })}
        />
      </div>
      <ItemRows items={items} known={known} set={(rows) => set({ ...equipped, items: rows })} />
    </>
  );
}
