// A new step by typing what is done: the sentences that fit are offered as one types, the usual way first. Enter takes one,
// and the field is ready for the next.
import { useEffect, useMemo, useRef, useState } from 'react';
import {
  Button,
  ComboBox,
  Input,
  type Key,
  Label,
  ListBox,
  ListBoxItem,
  Popover,
  Text,
} from 'react-aria-components';
import { words } from '../../words.ts';
import { type Editing, sentenceOf } from '../editing.ts';
import type { NewStep } from '../model/steps.ts';
import { searched, suggestionsFor } from '../model/suggest.ts';

interface AddStepProps extends Pick<Editing, 'draft'> {
  readonly add: (step: NewStep) => void;
  /** Where it goes, in words. */
  readonly where: string;
}

/** Pixels below the field in which the list is still of use. */
const ROOM = 320;

/** The list stays below the field, where it does not move while one types: a finger would hit what lies beneath it. */
function makeRoom({ currentTarget }: { readonly currentTarget: HTMLElement }): void {
  const below = window.innerHeight - currentTarget.getBoundingClientRect().bottom;
  if (below < ROOM) currentTarget.scrollIntoView({ block: 'start' });
}

const NOTHING: ReturnType<typeof suggestionsFor> = [];

/** Hundreds of sentences: made only while somebody looks for one. */
function useSuggestions(draft: Editing['draft'], wanted: boolean) {
  return useMemo(() => {
    if (!wanted) return NOTHING;
    const names = (step: NewStep): string =>
      [
        words.action(step.action),
        words.person(draft, step.who),
        ...step.items.map(words.item),
        step.technique === undefined ? '' : words.technique(step.technique),
      ].join(' ');
    return suggestionsFor(draft, (step) => sentenceOf(draft, step), names);
  }, [draft, wanted]);
}

export function AddStep({ draft, add, where }: AddStepProps) {
  const [typed, type] = useState('');
  // The field starts anew with every step: otherwise clearing it would open the whole list over the steps.
  const [round, next] = useState(0);
  const field = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (round > 0) field.current?.focus();
  }, [round]);
  const [opened, open] = useState(false);
  const suggestions = useSuggestions(draft, opened || typed !== '');
  const found = useMemo(() => searched(suggestions, typed), [suggestions, typed]);
  const take = (key: Key | null): void => {
    const chosen = suggestions.find((one) => one.key === key);
    if (!chosen) return;
    add(chosen.step);
    type('');
    next(round + 1);
    open(false);
  };
  return (
    <ComboBox
      key={round}
      className="add-step"
      menuTrigger="input"
      items={found}
      inputValue={typed}
      onInputChange={type}
      onOpenChange={open}
      value={null}
      onChange={take}
      allowsEmptyCollection
    >
      <Label>Add a step</Label>
      <div className="add-line">
        <Input ref={field} onFocus={makeRoom} placeholder="Type what is done, such as: remove gloves" />
        <Button className="button" aria-label="Show steps that fit">
          ▾
        </Button>
      </div>
      <Text slot="description" className="quiet">
        It goes {where}. Arrow keys choose, Enter adds.
      </Text>
      <Popover className="popover" placement="bottom start" shouldFlip={false}>
        <ListBox<(typeof found)[number]>
          className="suggestions"
          renderEmptyState={() => <p className="quiet">Nothing the vocabulary can say fits these words.</p>}
        >
          {(one) => (
            <ListBoxItem id={one.key} textValue={one.sentence} className="suggestion">
              {one.sentence}
            </ListBoxItem>
          )}
        </ListBox>
      </Popover>
    </ComboBox>
  );
}
