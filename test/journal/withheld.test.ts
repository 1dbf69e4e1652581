// What is withheld on the way to somebody who does not need it: the chain can still be followed, only a device's own copy takes
// it, and the answer cannot be guessed from its hash.
import { describe, expect, test } from 'vitest';
import { memoryStore } from '../../src/journal/adapters/memory.ts';
import { audit } from '../../src/journal/audit.ts';
import { contentText, type Entry } from '../../src/journal/entry.ts';
import { hashOfText } from '../../src/journal/hash.ts';
import { readBody } from '../../src/journal/reading.ts';
import { isWithheld, withhold } from '../../src/journal/withheld.ts';
import { BODIES, device, notes } from './samples.ts';

const KIND = 'exit.question-answered';
const REPLIES = ['no', 'yes', 'not-sure'];

/** A chain with an answer in its middle. */
function chain(): readonly Entry[] {
  const tablet = device('tablet-1');
  return [...notes(2, tablet), tablet.write(KIND, { ...BODIES[KIND], answer: 'yes' }), ...notes(2, tablet)];
}

test('only the answer goes, with its salt; the hash and everything else stay', () => {
  const [note, , whole] = chain() as [Entry, Entry, Entry];
  const told = withhold(whole);
  expect(told).toEqual({ ...whole, body: { ...whole.body, answer: 'withheld', salt: null } });
  expect([isWithheld(told), isWithheld(whole)]).toEqual([true, false]);
  expect(withhold(note)).toBe(note);
  expect(readBody(told)).toMatchObject({ body: { question: 'torn-glove', answer: 'withheld' } });
});

describe('a device’s store', () => {
  test('takes it where the server handed it on, and nowhere else', async () => {
    const store = memoryStore();
    const told = chain().map(withhold);
    await expect(store.append(told)).rejects.toMatchObject({ problem: { code: 'hash-wrong', index: 2 } });
    expect(await store.read(1)).toEqual([]);
    await store.append(told, { received: true });
    expect((await store.read(1)).map(({ entry }) => entry)).toEqual(told);
    // The whole entry, should it come later, is the same entry.
    await store.append(chain(), { received: true });
    expect((await audit(store, { received: true })).flaws).toEqual([]);
    expect((await audit(store, {})).flaws).toMatchObject([{ code: 'altered', number: 3 }]);
    await store.close();
  });

  test('takes nothing else that is altered, whoever handed it on', async () => {
    const store = memoryStore();
    const [first, ...rest] = chain();
    const forged = [{ ...first!, body: { ...first!.body, text: 'Other.' } }, ...rest];
    const yes = chain().map((entry) =>
      entry.kind === KIND ? { ...entry, body: { ...entry.body, answer: 'no' } } : entry,
    );
    for (const entries of [forged, yes])
      await expect(store.append(entries, { received: true })).rejects.toMatchObject({
        problem: { code: 'hash-wrong' },
      });
    await store.close();
  });
});

test('a mark that a device hashed itself is no answer: an audit says so, where it was stored before this release', async () => {
  const store = memoryStore();
  const pen = device('tablet-1');
  const entries = [...notes(1, pen), pen.write(KIND, { ...BODIES[KIND], answer: 'withheld' })];
  await store.append(entries, { received: true });
  expect((await audit(store, {})).flaws).toMatchObject([{ code: 'body-wrong', number: 2 }]);
  // A device that read it before goes on.
  expect((await audit(store, { received: true })).flaws).toEqual([]);
  await store.close();
});

describe('guessing', () => {
  /** Each answer tried in place of the mark, as somebody would who has the rest and the hash. */
  const guessed = (entry: Entry): readonly string[] =>
    REPLIES.filter(
      (answer) =>
        hashOfText(contentText({ ...withhold(entry), body: { ...withhold(entry).body, answer } })) ===
        entry.hash,
    );

  test('an answer of this release is not found by trying', () => {
    expect(guessed(device('tablet-1').write(KIND, { ...BODIES[KIND], answer: 'yes' }))).toEqual([]);
  });

  test('one of an earlier release, without a salt, is: docs/journal.md says so', () => {
    const { salt: _, ...first } = BODIES[KIND];
    expect(guessed(device('tablet-1').writeAny(KIND, { ...first, answer: 'yes' }))).toEqual(['yes']);
    expect(readBody({ kind: KIND, version: 1, body: first })).toEqual({ body: { ...first, salt: null } });
  });
});
