// What somebody wears, in the order of putting on: each item lies over those above it in the list. Reordered by dragging,
// by the list's own keys or by the buttons.
import { Button, DropIndicator, GridList, GridListItem, useDragAndDrop } from 'react-aria-components';
import { ITEM_IDS, type ItemId, itemKind } from '../../../domain/items.ts';
import type { Person } from '../../../domain/procedure.ts';
import { words } from '../../words.ts';
import type { Editing } from '../editing.ts';
import { moveWorn, shiftWorn, unwear, wear } from '../model/people.ts';
import { Chooser } from '../parts.tsx';

interface WornProps extends Editing {
  readonly person: Person;
}

function Row({ draft, edit, person, item }: WornProps & { readonly item: ItemId }) {
  const name = words.item(item);
  const at = person.wears.indexOf(item);
  return (
    <GridListItem id={item} textValue={name} className="worn">
      <Button slot="drag" className="grip" aria-label={`Move ${name}`}>
        ⠿
      </Button>
      <span className="worn-name">{name}</span>
      <Button
        className="button small"
        aria-label={`${name}: put on earlier`}
        isDisabled={at === 0}
        onPress={() => edit(shiftWorn(draft, person.id, item, -1), `Put on ${name} earlier`)}
      >
        ↑
      </Button>
      <Button
        className="button small"
        aria-label={`${name}: put on later`}
        isDisabled={at === person.wears.length - 1}
        onPress={() => edit(shiftWorn(draft, person.id, item, 1), `Put on ${name} later`)}
      >
        ↓
      </Button>
      <Button
        className="button small"
        aria-label={`Leave off ${name}`}
        onPress={() => edit(unwear(draft, person.id, item), `Leave off ${name}`)}
      >
        ✕
      </Button>
    </GridListItem>
  );
}

export function Worn({ draft, edit, person }: WornProps) {
  const { dragAndDropHooks } = useDragAndDrop({
    getItems: (keys) => [...keys].map((key) => ({ 'text/plain': String(key) })),
    onReorder: ({ keys, target }) => {
      if (target.dropPosition === 'on') return;
      const items = new Set([...keys].map(String));
      edit(moveWorn(draft, person.id, items, String(target.key), target.dropPosition), 'Change the layers');
    },
    renderDropIndicator: (target) => <DropIndicator target={target} className="drop-line" />,
  });
  const rest = ITEM_IDS.filter(
    (item) => !itemKind(item).underneath && !person.wears.includes(item) && !person.underneath.includes(item),
  );
  return (
    <>
      <GridList
        aria-label={`Worn by ${words.person(draft, person.id)}, in the order of putting on`}
        className="worn-list"
        dragAndDropHooks={dragAndDropHooks}
        dependencies={[draft]}
        renderEmptyState={() => (
          <p className="quiet">Nothing yet over {person.underneath.map(words.item).join(' and ')}.</p>
        )}
      >
        {person.wears.map((item) => (
          <Row key={item} draft={draft} edit={edit} person={person} item={item} />
        ))}
      </GridList>
      <Chooser
        label="Put on over it"
        press="Put on"
        choices={rest.map((item) => ({ value: item, name: words.item(item) }))}
        take={(item) => edit(wear(draft, person.id, item as ItemId), `Put on ${words.item(item as ItemId)}`)}
      />
    </>
  );
}
