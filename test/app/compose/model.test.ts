// Laws of the draft: whatever is done to it, its file reads back as itself; undo gives back exactly what was, redo what was
// undone; moves keep every step; a name is changed wherever it stands; a reload finds draft and history again.
import { fc, test as prop } from '@fast-check/vitest';
import { describe, expect, it } from 'vitest';
import {
  addPerson,
  changeKind,
  removePerson,
  shiftWorn,
  unwear,
  wear,
} from '../../../src/app/compose/model/people.ts';
import { asCopy, fileNameOf, fromNothing, fromText, textOf } from '../../../src/app/compose/model/draft.ts';
import { nameFrom, renamed } from '../../../src/app/compose/model/names.ts';
import { begun, changed, type History, redone, undone } from '../../../src/app/compose/model/history.ts';
import { packed, unpacked } from '../../../src/app/compose/model/pack.ts';
import { refitted, withField } from '../../../src/app/compose/model/refit.ts';
import {
  addFixture,
  addZone,
  changeFixture,
  changeZone,
  removeFixture,
  removeZone,
} from '../../../src/app/compose/model/room.ts';
import {
  accept,
  acceptables,
  changePolicy,
  changeSource,
  changeStart,
  startSurfaces,
  stateStart,
  unstateStart,
  withdraw,
  withoutSource,
} from '../../../src/app/compose/model/rules.ts';
import {
  duplicateSteps,
  insertSteps,
  moveSteps,
  removeSteps,
  replaceStep,
  shiftSteps,
} from '../../../src/app/compose/model/steps.ts';
import { suggestionsFor } from '../../../src/app/compose/model/suggest.ts';
import { ACTION_IDS } from '../../../src/domain/actions.ts';
import { ITEM_IDS } from '../../../src/domain/items.ts';
import { DEPENDENCES, type Procedure } from '../../../src/domain/procedure.ts';
import { isUnmatched } from '../../../src/check/acceptance.ts';
import { verify } from '../../../src/verify.ts';
import { FIXTURE_KIND_IDS, ZONE_SIDES } from '../../../src/domain/room.ts';
import { readProcedure } from '../../../src/language/index.ts';
import { procedure as written } from '../../language/arbitrary.ts';
import { goodDoffing, goodText } from '../../support/good.ts';

type Edit = (procedure: Procedure) => Procedure;

const at = <T>(list: readonly T[], index: number): T | undefined => list[index % Math.max(list.length, 1)];
const idsAt = (procedure: Procedure, places: readonly number[]): ReadonlySet<string> =>
  new Set(places.flatMap((place) => at(procedure.steps, place)?.id ?? []));
const n = fc.nat(40);
const some = fc.array(n, { maxLength: 4 });

const stepEdits: readonly fc.Arbitrary<Edit>[] = [
  fc.tuple(n, n, fc.constantFrom(...ACTION_IDS)).map(([place, who, action]) => (procedure: Procedure) => {
    const step = refitted(procedure, { who: at(procedure.people, who)?.id ?? '', action, items: [] });
    return insertSteps(procedure, place % (procedure.steps.length + 1), [step]).procedure;
  }),
  fc.tuple(n, fc.constantFrom(...ACTION_IDS)).map(([place, action]) => (procedure: Procedure) => {
    const step = at(procedure.steps, place);
    return step ? replaceStep(procedure, step.id, withField(procedure, step, 'action', action)) : procedure;
  }),
  some.map((places) => (procedure: Procedure) => removeSteps(procedure, idsAt(procedure, places))),
  some.map(
    (places) => (procedure: Procedure) => duplicateSteps(procedure, idsAt(procedure, places)).procedure,
  ),
  fc.tuple(some, n, fc.constantFrom('before' as const, 'after' as const)).map(
    ([places, target, where]) =>
      (procedure: Procedure) =>
        moveSteps(procedure, idsAt(procedure, places), at(procedure.steps, target)?.id ?? '', where),
  ),
  fc.tuple(some, fc.constantFrom(-1 as const, 1 as const)).map(
    ([places, by]) =>
      (procedure: Procedure) =>
        shiftSteps(procedure, idsAt(procedure, places), by),
  ),
];

const item = fc.constantFrom(...ITEM_IDS);
const settingEdits: readonly fc.Arbitrary<Edit>[] = [
  fc.tuple(n, item).map(
    ([who, one]) =>
      (procedure: Procedure) =>
        wear(procedure, at(procedure.people, who)?.id ?? '', one),
  ),
  fc.tuple(n, item).map(
    ([who, one]) =>
      (procedure: Procedure) =>
        unwear(procedure, at(procedure.people, who)?.id ?? '', one),
  ),
  fc.tuple(n, n).map(([who, one]) => (procedure: Procedure) => {
    const person = at(procedure.people, who);
    const worn = person && at(person.wears, one);
    return worn ? shiftWorn(procedure, person.id, worn, 1) : procedure;
  }),
  fc
    .constantFrom('observer' as const, 'assistant' as const)
    .map((role) => (procedure: Procedure) => addPerson(procedure, role)),
  n.map((who) => (procedure: Procedure) => removePerson(procedure, at(procedure.people, who)?.id ?? '')),
  fc.constantFrom(...ZONE_SIDES).map((side) => (procedure: Procedure) => addZone(procedure, side)),
  fc.tuple(n, fc.constantFrom(...ZONE_SIDES)).map(
    ([zone, side]) =>
      (procedure: Procedure) =>
        changeZone(procedure, at(procedure.zones, zone)?.id ?? '', side),
  ),
  n.map((zone) => (procedure: Procedure) => removeZone(procedure, at(procedure.zones, zone)?.id ?? '')),
  fc.tuple(fc.constantFrom(...FIXTURE_KIND_IDS), n).map(
    ([kind, zone]) =>
      (procedure: Procedure) =>
        addFixture(procedure, kind, at(procedure.zones, zone)?.id ?? ''),
  ),
  fc.tuple(n, fc.boolean()).map(
    ([one, clean]) =>
      (procedure: Procedure) =>
        changeFixture(procedure, at(procedure.fixtures, one)?.id ?? '', { clean }),
  ),
  n.map((one) => (procedure: Procedure) => removeFixture(procedure, at(procedure.fixtures, one)?.id ?? '')),
  fc
    .constantFrom('donning' as const, 'doffing' as const)
    .map((kind) => (procedure: Procedure) => changeKind(procedure, kind)),
];

const text = fc.constantFrom('Reason', 'Überprüft: "ja" #1', '2020', 'line\nand another');
const around: readonly fc.Arbitrary<Edit>[] = [
  fc.tuple(fc.constantFrom('title', 'publisher', 'seen', 'year', 'where', 'memory', 'interpreted'), text).map(
    ([field, written_]) =>
      (procedure: Procedure) =>
        changeSource(procedure, field, written_),
  ),
  fc.constant(withoutSource),
  n.map((place) => (procedure: Procedure) => {
    const surface = at(startSurfaces(procedure), place * 7);
    return surface === undefined ? procedure : stateStart(procedure, surface);
  }),
  fc.tuple(n, fc.constantFrom('maybe', 'uncontaminated'), fc.option(text, { nil: '' })).map(
    ([place, state, reason]) =>
      (procedure: Procedure) =>
        changeStart(procedure, at(procedure.start, place)?.surface ?? '', {
          state,
          reason,
        }),
  ),
  n.map(
    (place) => (procedure: Procedure) => unstateStart(procedure, at(procedure.start, place)?.surface ?? ''),
  ),
  fc.boolean().map((creditSpraying) => (procedure: Procedure) => changePolicy(procedure, { creditSpraying })),
  fc.option(fc.constantFrom(...DEPENDENCES), { nil: undefined }).map(
    (dependence) => (procedure: Procedure) =>
      changePolicy(procedure, {
        observer: dependence && { misses: 'hep.checker.active', dependence },
      }),
  ),
  fc.tuple(n, text).map(([place, reason]) => (procedure: Procedure) => {
    const step = at(procedure.steps, place)?.id;
    const finding = 'practice.hygiene-between-items';
    const days = { date: '2026-01-31', review: '2026-07-31' };
    const one = { finding, ...(step === undefined ? {} : { step }), reason, by: 'lead', ...days };
    return accept(procedure, one);
  }),
  n.map((place) => (procedure: Procedure) => withdraw(procedure, place)),
];

const edits = fc.array(fc.oneof(...stepEdits, ...settingEdits, ...around), { maxLength: 25 });
const start: fc.Arbitrary<Procedure> = fc.oneof(
  fc.constantFrom(fromNothing('doffing'), fromNothing('donning'), goodDoffing()),
  written,
);

const historyOf = (from: Procedure, made: readonly Edit[]): History =>
  made.reduce(
    (history, edit, index) => changed(history, edit(history.present.procedure), `edit ${index}`),
    begun(from, 'start'),
  );

const repeat = (times: number, work: (history: History) => History, history: History): History =>
  Array.from({ length: times }).reduce<History>((now) => work(now), history);

describe('a draft and its file', () => {
  prop.prop([start, edits])('agree after any edits whose file is without errors', (from, made) => {
    const draft = made.reduce((procedure, edit) => edit(procedure), from);
    const { procedure } = readProcedure(textOf(draft));
    if (procedure) expect(procedure).toEqual(draft);
  });

  it('from nothing lacks only its steps', () => {
    for (const kind of ['doffing', 'donning'] as const) {
      const { diagnostics } = readProcedure(textOf(fromNothing(kind)));
      expect(diagnostics.map(({ code }) => code)).toEqual(['empty-value']);
    }
  });

  it('are the same when nothing was edited, and comments are told of', () => {
    const { procedure, comments } = fromText(goodText, 'own.yaml');
    expect(procedure && readProcedure(textOf(procedure)).procedure).toEqual(goodDoffing());
    expect(comments).toBe(/^#(?! yaml-language-server)/m.test(goodText));
    expect(fromText(`# why this order\n${goodText}`, 'own.yaml').comments).toBe(true);
    expect(fromText(textOf(goodDoffing()), 'own.yaml').comments).toBe(false);
    expect(fromText(textOf({ ...goodDoffing(), about: 'room #4: "a" # b' }), 'own.yaml').comments).toBe(
      false,
    );
  });

  it('a file with errors gives none', () => {
    expect(fromText('kind: dofing', 'own.yaml').procedure).toBeUndefined();
  });

  it('a copy says so, and a file gets a name that every system takes', () => {
    expect(asCopy(goodDoffing()).title).toMatch(/^Copy of /);
    expect(fileNameOf({ ...goodDoffing(), title: 'Ein Übungs/Ablauf: "v2"?' })).toBe(
      'ein-übungs-ablauf-v2.yaml',
    );
    expect(fileNameOf({ ...goodDoffing(), title: '???' })).toBe('procedure.yaml');
  });
});

describe('steps', () => {
  prop.prop([written, edits])('every suggestion can be written into the file', (from) => {
    const suggested = suggestionsFor(
      from,
      () => '',
      () => '',
    ).slice(0, 400);
    const { procedure } = insertSteps(
      { ...from, start: [], accepted: [] },
      0,
      suggested.map(({ step }) => step),
    );
    const wrong = readProcedure(textOf(procedure)).diagnostics.filter(({ severity }) => severity === 'error');
    expect(wrong.map(({ code, text }) => `${code} ${text}`)).toEqual([]);
  });

  prop.prop([written, some, n, fc.constantFrom('before' as const, 'after' as const)])(
    'moving keeps every step and the order of both groups',
    (from, places, target, where) => {
      const ids = idsAt(from, places);
      const moved = moveSteps(from, ids, at(from.steps, target)?.id ?? '', where).steps;
      const apart = (steps: Procedure['steps'], inside: boolean) =>
        steps.filter(({ id }) => ids.has(id) === inside);
      for (const inside of [true, false]) expect(apart(moved, inside)).toEqual(apart(from.steps, inside));
      expect(moved).toHaveLength(from.steps.length);
    },
  );

  prop.prop([written, some])('one place later undoes one place earlier, save at the edge', (from, places) => {
    const ids = idsAt(from, places);
    const first = from.steps[0];
    fc.pre(first !== undefined && !ids.has(first.id));
    expect(shiftSteps(shiftSteps(from, ids, -1), ids, 1).steps).toEqual(from.steps);
  });
});

describe('what stands around the steps', () => {
  prop.prop([written, n])('any surface that is offered can be stated at the start', (from, place) => {
    const surface = at(startSurfaces(from), place * 11);
    fc.pre(surface !== undefined);
    const stated = { ...stateStart(from, surface), accepted: [] };
    const { diagnostics } = readProcedure(textOf(stated));
    expect(diagnostics.filter(({ code }) => code === 'unknown-surface' || code === 'stated-twice')).toEqual(
      [],
    );
    expect(startSurfaces(stated)).not.toContain(surface);
    expect(unstateStart(stated, surface).start).toEqual(from.start);
  });

  it('a departure that is accepted is not offered again, and an open route never is', () => {
    const good = goodDoffing();
    const without = removeSteps(
      good,
      new Set(good.steps.filter(({ action }) => action === 'sanitise').map(({ id }) => id)),
    );
    const findingsOf = (procedure: Procedure) => verify(textOf(procedure)).verdict?.findings ?? [];
    const found = findingsOf(without);
    const offered = acceptables(without, found);
    expect(found.some(({ kind }) => kind === 'open' || kind === 'one-slip')).toBe(true);
    expect(offered.length).toBeGreaterThan(0);
    for (const { finding } of offered) expect(finding).toMatch(/^(practice|coverage)\./);
    const signed = offered.reduce(
      (procedure, one) =>
        accept(procedure, { ...one, reason: 'why', by: 'lead', date: '2026-01-31', review: '2026-07-31' }),
      without,
    );
    const left = findingsOf(signed);
    expect(acceptables(signed, left)).toEqual([]);
    // Each is about something that was found.
    expect(signed.accepted.filter((one) => isUnmatched(one, signed, left))).toEqual([]);
    expect(signed.accepted.filter((one) => isUnmatched(one, signed, []))).toEqual(signed.accepted);
  });
});

describe('names', () => {
  prop.prop([written, n])('renaming there and back changes nothing', (from, who) => {
    const id = at(from.people, who)?.id ?? '';
    const there = renamed(from, 'person', id, 'somebody-else-entirely');
    expect(there.people.map((person) => person.id)).not.toContain(id);
    for (const step of there.steps) expect([step.who, step.of, step.helper]).not.toContain(id);
    expect(renamed(there, 'person', 'somebody-else-entirely', id)).toEqual(from);
  });

  it('a zone takes its floor along, a taken name is refused', () => {
    const draft = renamed(goodDoffing(), 'zone', goodDoffing().zones[0]?.id ?? '', 'isolation-room');
    expect(draft.fixtures.map(({ id }) => id)).toContain('isolation-room-floor');
    expect(readProcedure(textOf(draft)).procedure).toEqual(draft);
    expect(renamed(draft, 'zone', 'isolation-room', draft.zones[1]?.id ?? '')).toBe(draft);
    expect(nameFrom('  2nd Hand Rub! ')).toBe('nd-hand-rub');
  });
});

describe('undo and redo', () => {
  prop.prop([start, edits])(
    'go back to the first draft and forth to the last, each the very same',
    (from, made) => {
      const history = historyOf(from, made);
      const back = repeat(history.past.length, undone, history);
      expect(back.present.procedure).toBe(from);
      expect(undone(back).present.procedure).toBe(from);
      const forth = repeat(history.past.length, redone, back);
      expect(forth.present.procedure).toBe(history.present.procedure);
      expect(redone(forth).present.procedure).toBe(history.present.procedure);
    },
  );

  it('letters of one field are one step, an undo closes it', () => {
    const from = fromNothing('doffing');
    const type = (history: History, title: string) =>
      changed(history, { ...history.present.procedure, title }, 'title', 'title');
    const typed = ['A', 'Ab', 'Abc'].reduce(type, begun(from, 'start'));
    expect(typed.past).toHaveLength(1);
    expect(undone(typed).present.procedure).toBe(from);
    expect(type(redone(undone(typed)), 'Abcd').past).toHaveLength(2);
  });

  it('an edit after an undo ends what was undone', () => {
    const first = changed(begun(fromNothing('doffing'), 'start'), goodDoffing(), 'a');
    const other = changed(undone(first), fromNothing('donning'), 'b');
    expect(other.future).toEqual([]);
  });
});

describe('what is kept', () => {
  prop.prop([start, edits, n])('is the history, wherever in it one stands', (from, made, back) => {
    const history = repeat(back % 8, undone, historyOf(from, made));
    const found = unpacked(packed(history));
    expect(found?.present.procedure).toEqual(history.present.procedure);
    expect(found?.past.map(({ procedure, done }) => [procedure, done])).toEqual(
      history.past.map(({ procedure, done }) => [procedure, done]),
    );
    expect(found?.future.map(({ procedure }) => procedure)).toEqual(
      history.future.map(({ procedure }) => procedure),
    );
  });

  it('grows little with each edit of a long procedure', () => {
    const long = duplicateSteps(goodDoffing(), new Set(goodDoffing().steps.map(({ id }) => id))).procedure;
    const edit =
      (index: number): Edit =>
      (procedure) =>
        shiftSteps(procedure, new Set([at(procedure.steps, index)?.id ?? '']), 1);
    const history = historyOf(
      long,
      Array.from({ length: 200 }, (_, index) => edit(index)),
    );
    expect(packed(history).length).toBeLessThan(40 * textOf(long).length);
  });

  it('of a long history the nearest, and other text is not taken for one', () => {
    const history = historyOf(
      goodDoffing(),
      [1, 2, 3, 4].map(
        (one): Edit =>
          (procedure) => ({ ...procedure, title: `${one}` }),
      ),
    );
    expect(unpacked(packed(history, 2))?.past.map(({ procedure }) => procedure.title)).toEqual(['2', '3']);
    for (const text of ['', '{}', '[]', 'null', '{"format":2}', '{"format":1}'])
      expect(unpacked(text)).toBeUndefined();
  });
});
