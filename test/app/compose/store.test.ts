// Drafts outlive the page: a second page over the same store finds draft, undo and redo. A full store keeps what it can
// and says so.
import { describe, expect, it } from 'vitest';
import { fromNothing } from '../../../src/app/compose/model/draft.ts';
import { createDrafts } from '../../../src/app/compose/store/drafts.ts';
import { type DraftStore, localStore, memoryStore } from '../../../src/app/compose/store/port.ts';
import type { Procedure } from '../../../src/domain/procedure.ts';

const counting = (): (() => string) => {
  let last = 0;
  return () => {
    last += 1;
    return `d${last}`;
  };
};

const titled = (title: string): Procedure => ({ ...fromNothing('doffing'), title });

/** The browser's store as far as drafts use it, with room for so many characters in one entry. */
function storageOf(room: number): Storage {
  const kept = new Map<string, string>();
  return {
    get length() {
      return kept.size;
    },
    key: (at) => [...kept.keys()][at] ?? null,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, text) => {
      if (text.length > room) throw new DOMException('full', 'QuotaExceededError');
      kept.set(key, text);
    },
    removeItem: (key) => void kept.delete(key),
    clear: () => kept.clear(),
  };
}

const ROOMY = 1_000_000;
const STORES: readonly (readonly [string, DraftStore])[] = [
  ['memory', memoryStore()],
  ['the browser’s store', localStore(storageOf(ROOMY))],
];

describe.each(STORES)('drafts in %s', (_, store) => {
  it('two pages over one store lose no edit of either, and each can be undone', () => {
    const [one, other] = [createDrafts(store, counting()), createDrafts(store, counting())];
    const id = one.create(titled('first'), 'new');
    other.apply(id, { do: 'edit', procedure: titled('by the other'), done: 'edit' });
    one.apply(id, { do: 'edit', procedure: titled('by the one'), done: 'edit' });
    other.apply(id, { do: 'undo' });
    expect(other.get(id)?.history.present.procedure.title).toBe('by the other');
    other.apply(id, { do: 'undo' });
    expect(other.get(id)?.history.present.procedure.title).toBe('first');
    one.remove(id);
    other.apply(id, { do: 'redo' });
    expect(other.get(id)).toBeUndefined();
  });

  it('are found again with undo and redo by the next page', () => {
    const first = createDrafts(store, counting());
    const id = first.create(titled('one'), 'new');
    first.apply(id, { do: 'edit', procedure: titled('two'), done: 'two' });
    first.apply(id, { do: 'edit', procedure: titled('three'), done: 'three' });
    first.apply(id, { do: 'undo' });

    const second = createDrafts(store, counting());
    const title = (): string | undefined => second.get(id)?.history.present.procedure.title;
    expect(second.ids()).toEqual([id]);
    expect(title()).toBe('two');
    second.apply(id, { do: 'redo' });
    expect(title()).toBe('three');
    second.apply(id, { do: 'undo' });
    second.apply(id, { do: 'undo' });
    expect(title()).toBe('one');
    expect(second.get(id)?.kept).toBe('all');
  });

  it('that are deleted stay deleted', () => {
    const before = createDrafts(store, () => 'gone');
    before.remove(before.create(titled('x'), 'new'));
    expect(before.ids()).not.toContain('gone');
    expect(createDrafts(store, counting()).get('gone')).toBeUndefined();
  });
});

describe('a store that is full', () => {
  const edited = (room: number) => {
    const storage = storageOf(room);
    const drafts = createDrafts(localStore(storage), counting());
    const id = drafts.create(titled('start'), 'new');
    for (let n = 0; n < 150; n += 1)
      drafts.apply(id, { do: 'edit', procedure: titled(`${n} ${'x'.repeat(200)}`), done: `${n}` });
    return { drafts, id, next: createDrafts(localStore(storage), counting()) };
  };

  it('keeps the draft with fewer undo steps, and says so', () => {
    const { drafts, id, next } = edited(30_000);
    expect(drafts.get(id)?.kept).toBe('some');
    expect(drafts.get(id)?.history.past).toHaveLength(150);
    expect(next.get(id)?.history.present.procedure.title).toMatch(/^149 /);
  });

  it('says when nothing is kept any more', () => {
    const { drafts, id, next } = edited(1);
    expect(drafts.get(id)?.kept).toBe('none');
    expect(next.get(id)).toBeUndefined();
  });
});
