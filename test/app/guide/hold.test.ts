// Which tab runs an exit, told by tabs that hear one another, with the browser's locks and without: never two at once, one
// takes over from the other when it has saved, and not before; from a dead one without waiting for ever.
import { describe, expect, test } from 'vitest';
import { type Hold, type HoldMessage, holdOf, type HoldParts } from '../../../src/app/guide/shell/hold.ts';
import type { Link } from '../../../src/app/guide/shell/link.ts';

/** Tabs that hear one another, never themselves. */
function bus() {
  const ears = new Map<string, (message: HoldMessage) => void>();
  return (tab: string): Link<HoldMessage> => ({
    post: (message) => {
      for (const [other, hear] of ears) if (other !== tab) queueMicrotask(() => hear(message));
    },
    listen: (hear) => {
      ears.set(tab, hear);
      return () => ears.delete(tab);
    },
  });
}

interface Holder {
  readonly free: () => void;
  readonly steal: () => void;
}

/** The browser's locks, for one name. */
function locksOf(): NonNullable<HoldParts['locks']> {
  let holder: Holder | undefined;
  const request = async (
    _name: string,
    options: LockOptions,
    then: (lock: Lock | null) => unknown,
  ): Promise<unknown> => {
    if (holder && options.steal !== true) return then(null);
    holder?.steal();
    return new Promise((resolve, reject) => {
      const mine: Holder = {
        free: () => undefined,
        steal: () => reject(new DOMException('stolen', 'AbortError')),
      };
      holder = mine;
      Promise.resolve(then({ name: 'one', mode: 'exclusive' })).then((value) => {
        if (holder === mine) holder = undefined;
        resolve(value);
      }, reject);
    });
  };
  return { request } as unknown as NonNullable<HoldParts['locks']>;
}

interface Tab {
  readonly hold: Hold;
  readonly lost: () => number;
}

const turns = async (): Promise<void> => {
  for (let turn = 0; turn < 60; turn += 1) await Promise.resolve();
};

function tabOf(
  tab: string,
  parts: Pick<HoldParts, 'link' | 'locks'>,
  saves: () => boolean = () => true,
): Tab {
  let lost = 0;
  const hold = holdOf('x-1', {
    tab,
    ...parts,
    wait: turns,
    letGo: async () => Promise.resolve(saves()),
    lost: () => {
      lost += 1;
    },
  });
  return { hold, lost: () => lost };
}

describe.each([
  ['with locks', true],
  ['without locks', false],
] as const)('%s', (_name, hasLocks) => {
  function tabs(saves: () => boolean = () => true) {
    const [on, locks] = [bus(), hasLocks ? locksOf() : undefined];
    return {
      one: tabOf('a', { link: on('a'), locks }, saves),
      other: tabOf('b', { link: on('b'), locks }),
    };
  }

  test('the first has it, the second does not, and takes over when somebody says so', async () => {
    const { one, other } = tabs();
    expect(await one.hold.claim()).toBe(true);
    expect(await other.hold.claim()).toBe(false);
    expect(await one.hold.claim()).toBe(true);
    expect(await other.hold.take()).toBe('taken');
    await turns();
    expect([one.lost(), other.lost()]).toEqual([1, 0]);
    expect(await other.hold.claim()).toBe(true);
    expect(await one.hold.claim()).toBe(false);
    expect(await one.hold.take()).toBe('taken');
    await turns();
    expect([one.lost(), other.lost()]).toEqual([1, 1]);
  });

  test('stays where not everything is saved, until it is', async () => {
    let saved = false;
    const { one, other } = tabs(() => saved);
    await one.hold.claim();
    expect(await other.hold.take()).toBe('unsaved');
    expect(one.lost()).toBe(0);
    expect(await other.hold.claim()).toBe(false);
    saved = true;
    expect(await other.hold.take()).toBe('taken');
    expect(one.lost()).toBe(1);
  });

  test('of two that ask at once one has it', async () => {
    const { one, other } = tabs();
    const had = await Promise.all([other.hold.claim(), one.hold.claim()]);
    expect(had.filter(Boolean)).toHaveLength(1);
  });

  test('is free again once its tab has left it', async () => {
    const { one, other } = tabs();
    await one.hold.claim();
    one.hold.leave();
    await turns();
    expect(one.lost()).toBe(1);
    expect(await other.hold.claim()).toBe(true);
  });
});

test('a tab that does not answer is taken over from, and stops when it hears of it', async () => {
  const locks = locksOf();
  const deaf: Link<HoldMessage> = { post: () => undefined, listen: () => () => undefined };
  const one = tabOf('a', { link: deaf, locks });
  const other = tabOf('b', { link: bus()('b'), locks });
  expect(await one.hold.claim()).toBe(true);
  expect(await other.hold.take()).toBe('taken');
  await turns();
  expect(one.lost()).toBe(1);
});
