// The live exit, press by press: what is read, answered, timed, recorded, stopped, handed over and ended, and in which
// order entries, screens and effects come. The clock is the test's.
import { describe, expect, test } from 'vitest';
import { begin, type Effect, screenOf, scriptOf, type UnitPlan } from '../../src/guide/index.ts';
import { EMERGENCY_IDS } from '../../src/domain/emergencies.ts';
import { evidence } from '../../src/evidence/index.ts';
import type { Step } from '../../src/domain/procedure.ts';
import {
  APPROVAL,
  beginWith,
  NOON,
  OBSERVER,
  onward,
  PEOPLE,
  press,
  readTo,
  type Run,
  scriptFor,
  setupOf,
  SMALL,
  SMALL_DONNING,
  started,
  tell,
  wait,
} from './support.ts';

const OCCASION = { exit: 'x1', room: 'room-1', at: NOON, by: OBSERVER } as const;
const script = scriptFor(SMALL);
const kinds = (run: Run): readonly string[] => run.stored.map(({ kind }) => kind);
const doing = (run: Run, what: Effect['do']): readonly Effect[] =>
  run.effects.filter((effect) => effect.do === what);
const screen = (run: Run) => screenOf(run.state);

describe('beginning', () => {
  test('an exit needs the approval of this very text, and one that has not run out', () => {
    const at = (mode: Parameters<typeof begin>[2]) => begin(script, PEOPLE, mode, OCCASION);
    expect(at({ is: 'exit' })).toEqual({ ok: false, bar: 'not-approved' });
    expect(at({ is: 'exit', approval: { ...APPROVAL, by: [] } })).toEqual({ ok: false, bar: 'not-approved' });
    expect(at({ is: 'exit', approval: { ...APPROVAL, content: 'b'.repeat(64) } })).toEqual({
      ok: false,
      bar: 'approved-other-text',
    });
    expect(at({ is: 'exit', approval: { ...APPROVAL, reviewOn: '2026-11-24' } })).toEqual({
      ok: false,
      bar: 'approval-ended',
    });
    expect(at({ is: 'exit', approval: { ...APPROVAL, reviewOn: '2026-11-25' } }).ok).toBe(true);
    expect(begin(script, { ...PEOPLE, observer: '' }, { is: 'drill' }, OCCASION)).toEqual({
      ok: false,
      bar: 'no-observer',
    });
  });

  test('a drill may use any procedure, and says for as long as it lasts that it is not approved', () => {
    const drill = readTo(beginWith(script), 'rub/look');
    expect(screen(drill).notices).toEqual(expect.arrayContaining(['drill', 'unapproved', 'invented']));
    const real = beginWith(script, false);
    expect(screen(real).notices).not.toContain('drill');
    expect(screen(real).notices).not.toContain('unapproved');
    expect(real.stored[0]).toMatchObject({
      kind: 'exit.started',
      body: { drill: false, wearer: PEOPLE.wearer },
    });
  });

  test('keeps the screen awake until the end', () => {
    const run = beginWith(script);
    expect(doing(run, 'keep-awake')).toEqual([{ do: 'keep-awake', on: true }]);
    const ended = press(readTo(run, 'end/finish'), { is: 'end' });
    expect(doing(ended, 'keep-awake')).toEqual([{ do: 'keep-awake', on: false }]);
  });
});

describe('reading', () => {
  test('never goes on by itself, whatever the clock says', () => {
    let run = beginWith(script);
    for (let hour = 0; hour < 48; hour += 1) {
      run = wait(run, 3600);
      expect(run.state.core.line).toBe(0);
    }
  });

  test('a whole exit: each step answered once, questions asked, and an end that says only what was seen', () => {
    const run = press(readTo(beginWith(script, false), 'end/finish'), { is: 'end' });
    const answered = run.stored.flatMap((entry) =>
      entry.kind === 'exit.line-confirmed' ? [entry.body.line] : [],
    );
    expect(new Set(answered).size).toBe(answered.length);
    expect(run.state.core.ended).toMatchObject({ how: 'finished', deviations: 0, linesNotSeen: 0 });
    for (const { rows } of screen(run).large) expect(rows.join(' ')).toMatch(/^Exit ended \d\d:\d\d$/);
    expect(screen(run).outcome).toBe('no-deviation-seen');
    expect(screen(run).presses).toEqual(['note', 'emergency']);
    const late = press(run, { is: 'emergency', emergency: 'faint' });
    expect(screen(late).phase).toBe('emergency');
    expect(screen(press(late, { is: 'return' })).phase).toBe('ended');
    expect(kinds(run).filter((kind) => kind === 'exit.question-answered')).toHaveLength(5);
  });

  test('the observer looks before going on: no forward past a look, no answer before it', () => {
    const run = readTo(beginWith(script), 'call/look');
    expect(press(run, { is: 'forward' }).state.refusal).toBe('not-now');
    expect(press(beginWith(script), { is: 'seen' }).state.refusal).toBe('not-now');
    expect(press(run, { is: 'seen' }, PEOPLE.wearer).state.refusal).toBe('observer-only');
  });

  test('"not seen" is an answer, is kept, and ends in "not every step was seen"', () => {
    const run = press(readTo(beginWith(script), 'call/look'), { is: 'not-seen' });
    expect(run.stored.at(-2)).toMatchObject({ kind: 'exit.not-seen', body: { step: 'call' } });
    const ended = press(readTo(run, 'end/finish'), { is: 'end' });
    expect(ended.state.core.ended?.linesNotSeen).toBe(1);
    expect(screen(ended).outcome).toBe('not-all-seen');
  });

  test('what is read is large for whoever does it, in their language, and spoken to them', () => {
    const french = scriptOf(setupOf(SMALL, { languages: { wearer: 'fr' } }));
    const run = press(press(beginWith(french), { is: 'forward' }), { is: 'seen' });
    expect(screen(run).line.group).toBe('gloves-off/read');
    const [wearer, observer] = screen(run).large;
    expect(wearer).toMatchObject({ person: 'wearer', language: 'fr', rows: ['Retirez les gants'] });
    expect(observer).toMatchObject({ person: 'observer', language: 'en', rows: ['Remove the gloves'] });
    expect(doing(run, 'speak')).toEqual([
      { do: 'speak', text: 'Retirez les gants', language: 'fr', for: 'wearer' },
    ]);
    const look = readTo(run, 'gloves-off/look');
    expect(screen(look).large[1]?.rows).toEqual(['Watch', 'Wait for the answer']);
    expect(screen(look).large[0]?.answer).toBe('Fait.');
  });
});

describe('times', () => {
  const rub = readTo(beginWith(script), 'rub/look');

  test('are owed with their source, and the step is not answered before they are up', () => {
    expect(screen(rub).owed).toEqual([
      { id: 'rub-rub', kind: 'rub', seconds: 30, evidence: 'disinfection.hand-rub.who' },
      { id: 'rub-dry', kind: 'dry', seconds: 67, evidence: 'handrub.dry.3ml' },
    ]);
    expect(press(rub, { is: 'seen' }).state.refusal).toBe('timer-running');
    expect(press(rub, { is: 'not-seen' }).state.refusal).toBe('timer-running');
    expect(screen(rub).presses).not.toContain('seen');
  });

  test('run, are shown whatever lies over the line, and end by the clock', () => {
    const run = press(rub, { is: 'start-timer' });
    expect(doing(run, 'start-timer')).toHaveLength(2);
    expect(screen(press(run, { is: 'stop' })).timers).toHaveLength(2);
    expect(screen(press(run, { is: 'emergency', emergency: 'fire' })).timers).toHaveLength(2);
    const half = wait(run, 30);
    expect(screen(half).timers.map(({ id }) => id)).toEqual(['rub-dry']);
    expect(doing(half, 'sound')).toEqual([{ do: 'sound', what: 'time-up' }]);
    expect(press(half, { is: 'seen' }).state.refusal).toBe('timer-running');
    const over = wait(half, 37);
    expect(screen(over).timers).toEqual([]);
    expect(press(over, { is: 'seen' }).state.refusal).toBeNull();
  });

  test('cut short only with a reason, recorded as the slip it is', () => {
    const run = press(wait(press(rub, { is: 'start-timer' }), 10), {
      is: 'go-early',
      reason: 'wearer-unwell',
    });
    expect(run.stored.filter(({ kind }) => kind === 'exit.timer-ended').map(({ body }) => body)).toEqual([
      { exit: 'x1', timer: 'rub-rub', how: 'cut-short', seconds: 11 },
      { exit: 'x1', timer: 'rub-dry', how: 'cut-short', seconds: 11 },
    ]);
    expect(run.state.core.happened).toEqual(['rub:inadequate-hygiene']);
    expect(run.state.core.deviations[0]?.text).toBe('wearer-unwell');
    expect(press(run, { is: 'seen' }).state.refusal).toBeNull();
    const end = press(readTo(run, 'end/finish'), { is: 'end' });
    expect(screen(end).outcome).toBe('deviation-recorded');
  });

  test('a wiped chair that was not kept wet is wiped too short', () => {
    const run = press(readTo(beginWith(script), 'chair/look'), { is: 'go-early', reason: 'label-says-less' });
    expect(run.state.core.happened).toEqual(['chair:wipe-too-short']);
    expect(run.stored.filter(({ kind }) => kind.startsWith('exit.timer')).slice(-2)).toMatchObject([
      { kind: 'exit.timer-started' },
      { kind: 'exit.timer-ended', body: { seconds: 0, how: 'cut-short' } },
    ]);
  });

  test("are the unit's own where it gives them, with their source", () => {
    const times = { 'disinfectant-wipe': { contactSeconds: 120, source: 'Label of our wipes' } };
    const run = readTo(beginWith(scriptOf(setupOf(SMALL, { times }))), 'chair/look');
    expect(screen(run).owed).toEqual([
      { id: 'chair-contact', kind: 'contact', seconds: 120, source: 'Label of our wipes' },
    ]);
    const usual = readTo(beginWith(script), 'chair/look');
    expect(screen(usual).owed[0]?.seconds).toBe(600);
  });
});

describe('a stop', () => {
  test("is anybody's, freezes reading, and only the observer resumes", () => {
    const run = press(readTo(beginWith(script), 'gloves-off/look'), { is: 'stop' }, PEOPLE.wearer);
    expect(screen(run).phase).toBe('stopped');
    expect(screen(run).large[0]?.rows).toEqual(['STOP', 'Nobody moves']);
    for (const what of ['forward', 'seen', 'not-seen', 'end', 'leave'] as const) {
      const tried = press(run, { is: what });
      expect(tried.state.refusal).not.toBeNull();
      expect(tried.state.core).toBe(run.state.core);
    }
    expect(press(run, { is: 'resume' }, PEOPLE.wearer).state.refusal).toBe('observer-only');
    expect(press(run, { is: 'resume' }).state.core.stopped).toBeNull();
  });

  test('goes on from the last line answered, read again, then from the step that was not', () => {
    const run = press(press(readTo(beginWith(script), 'gloves-off/look'), { is: 'stop' }), { is: 'resume' });
    expect(screen(run).phase).toBe('recap');
    expect(screen(run).large[0]?.rows).toEqual(['Call and wait for the answer']);
    expect(run.stored.at(-1)).toMatchObject({ kind: 'exit.resumed', body: { step: 'call' } });
    const on = press(run, { is: 'forward' });
    expect(screen(on).line.group).toBe('gloves-off/read');
    expect(screen(on).phase).toBe('reading');
  });

  test('before anything was answered goes back to the first line', () => {
    const run = press(press(readTo(beginWith(script), 'call/look'), { is: 'stop' }), { is: 'resume' });
    expect(screen(run).line.group).toBe('call/read');
    expect(screen(run).phase).toBe('reading');
  });
});

describe('what goes wrong', () => {
  const gloves = readTo(beginWith(script), 'gloves-off/look');

  test('each step offers its own slips, those that are seen first', () => {
    const { slips } = screen(gloves);
    expect(slips.length).toBeGreaterThan(1);
    expect(slips.every(({ key }) => key.startsWith('gloves-off:'))).toBe(true);
    const seen = slips.map(({ visible }) => visible);
    expect(seen).toEqual(seen.toSorted((a, b) => Number(b) - Number(a)));
    expect(screen(gloves).finds.map(({ what }) => what)).toContain('worn-through');
  });

  test('a slip changes what is suspect and asks for the best way on', () => {
    expect(screen(gloves).suspects).toEqual([]);
    const run = press(gloves, { is: 'slip', event: 'gloves-off:wrong-grip' });
    const hands = screen(run).suspects?.filter(({ surface }) => surface.startsWith('wearer.hand')) ?? [];
    expect(hands.map(({ needs }) => needs)).toContain(0);
    expect(doing(run, 'search-continuation')).toMatchObject([
      { doneSteps: 2, known: { happened: ['gloves-off:wrong-grip'] } },
    ]);
    expect(screen(run).searching).toBe(true);
  });

  test('anything else is a category, and a place where the observer saw it', () => {
    const touched = press(gloves, { is: 'deviation', category: 'touched-face', surfaces: ['wearer.face'] });
    expect(screen(touched).suspects).toMatchObject([{ surface: 'wearer.face', needs: 0 }]);
    expect(screen(touched).unplaced).toBe(0);
    const vague = press(gloves, { is: 'deviation', category: 'something-else', text: 'a drop, perhaps' });
    expect(screen(vague).unplaced).toBe(1);
  });

  test('one who ran ahead of the reading is watched from there', () => {
    const run = press(readTo(beginWith(script), 'gloves-off/read'), { is: 'slip', event: 'gloves-off:snap' });
    expect(screen(run).line.group).toBe('gloves-off/look');
  });

  test('a slip that is yet to come, or of no step, is refused', () => {
    expect(press(gloves, { is: 'slip', event: 'gown-off:brush' }).state.refusal).toBe('not-now');
    expect(press(gloves, { is: 'slip', event: 'nothing' }).state.refusal).toBe('not-now');
  });
});

describe('another way on', () => {
  const rest: readonly Step[] = [
    { id: 'rub-again', who: 'wearer', action: 'sanitise', items: [], product: 'alcohol-hand-rub' },
    ...SMALL.steps.slice(2),
  ];
  const found = { id: 'c1', steps: rest, barriers: { before: 0, after: 1 } };
  const slipped = press(readTo(beginWith(script), 'gloves-off/look'), {
    is: 'slip',
    event: 'gloves-off:wrong-grip',
  });
  const offered = tell(slipped, {
    is: 'continuation',
    search: slipped.state.search!.id,
    found,
    at: NOON,
    by: null,
  });

  test('is offered with its barriers, and must be answered before reading goes on', () => {
    expect(screen(offered)).toMatchObject({
      phase: 'offer',
      offer: { continuation: { barriers: { after: 1 } } },
    });
    expect(press(offered, { is: 'seen' }).state.refusal).toBe('offer-open');
    expect(press(offered, { is: 'decline', reason: ' ' }).state.refusal).toBe('reason-missing');
    const declined = press(offered, { is: 'decline', reason: 'hands are cleaned next' });
    expect(declined.stored.at(-1)).toMatchObject({ body: { choice: null, text: 'hands are cleaned next' } });
    expect(press(declined, { is: 'seen' }).state.refusal).toBeNull();
    expect(declined.state.core.script).toBe(script);
  });

  test('replaces the rest of the script and nothing of what was done', () => {
    const run = press(offered, { is: 'accept' });
    const after = run.state.core.script;
    expect(after.lines.slice(0, run.state.core.line + 1)).toEqual(
      script.lines.slice(0, run.state.core.line + 1),
    );
    const on = press(press(run, { is: 'seen' }), { is: 'seen' });
    expect(screen(on).line.group).toBe('rub-again/read');
    expect(screen(press(readTo(on, 'end/finish'), { is: 'end' })).outcome).toBe('deviation-recorded');
  });

  test('an answer that comes too late is asked for again from where the exit stands', () => {
    const moved = press(slipped, { is: 'seen' });
    expect(doing(moved, 'search-continuation')).toEqual([]);
    const further = readTo(moved, 'rub/look');
    expect(further.state.search?.done).toBe(3);
    const [first, second] = [slipped.state.search!.id, further.state.search!.id];
    const late = tell(further, { is: 'continuation', search: first, found, at: NOON, by: null });
    expect(late.state.core.offer).toBeNull();
    expect(
      screen(tell(late, { is: 'continuation', search: second, found: null, at: NOON, by: null })).searching,
    ).toBe(false);
  });
});

describe('emergencies', () => {
  test.each(EMERGENCY_IDS)(
    '%s opens from reading, a stop and a recap, and leads back to where one was',
    (emergency) => {
      const reading = readTo(beginWith(script), 'rub/look');
      const stopped = press(reading, { is: 'stop' });
      const recap = press(stopped, { is: 'resume' });
      for (const [from, phase] of [
        [reading, 'recap'],
        [stopped, 'stopped'],
        [recap, 'recap'],
      ] as const) {
        const open = press(from, { is: 'emergency', emergency }, PEOPLE.wearer);
        expect(screen(open).phase).toBe('emergency');
        expect(screen(open).card?.items.length).toBeGreaterThan(2);
        const closed = press(open, { is: 'return' });
        expect(screen(closed).phase).toBe(phase);
        expect(closed.state.core.line).toBe(from.state.core.line);
        expect(press(open, { is: 'return' }, PEOPLE.wearer).state.refusal).toBe('observer-only');
      }
    },
  );

  test("the unit's own plan and phone list come first, and the plan names who goes in", () => {
    const plan: UnitPlan = {
      title: 'Plan of Larkmoor (invented)',
      approvedBy: 'committee (invented)',
      date: '2026-01-01',
      phones: [{ who: 'Occupational health (invented)', number: '0000' }],
      rescuer: 'second nurse in the room',
      cards: { sharps: { actions: ['Press the red button.'], rinseMinutes: 3 } },
    };
    const open = press(beginWith(scriptOf(setupOf(SMALL, { plan }))), {
      is: 'emergency',
      emergency: 'sharps',
    });
    const { card, rescuer, large, notices } = screen(open);
    expect(card?.phones).toEqual(plan.phones);
    expect(card?.items[0]).toEqual({ from: 'unit', text: 'Press the red button.' });
    expect(card?.items.slice(1).every(({ from }) => from === 'published')).toBe(true);
    expect(large[0]?.rows).toEqual(['Press the red button']);
    expect(rescuer).toBe('second nurse in the room');
    expect(notices).not.toContain('no-rescuer');
    expect(screen(press(open, { is: 'start-timer' })).timers).toMatchObject([
      { id: 'sharps-rinse', seconds: 180 },
    ]);
    expect(screen(beginWith(script)).notices).toEqual(expect.arrayContaining(['no-unit-plan', 'no-rescuer']));
  });

  test('a rinse runs its fifteen minutes, stays on the screen, and is not forgotten at the end', () => {
    const open = press(readTo(beginWith(script), 'end/finish'), {
      is: 'emergency',
      emergency: 'splash-face',
    });
    const rinsing = press(press(press(open, { is: 'start-timer' }), { is: 'return' }), { is: 'forward' });
    expect(screen(rinsing).timers).toMatchObject([{ id: 'splash-face-rinse', seconds: 900 }]);
    expect(press(rinsing, { is: 'end' }).state.refusal).toBe('timer-running');
    expect(press(wait(rinsing, 900), { is: 'end' }).state.core.ended).not.toBeNull();
    const cut = press(rinsing, { is: 'go-early', reason: 'other', text: 'ambulance' });
    expect(cut.state.core.deviations.at(-1)).toMatchObject({
      slip: 'other:too-short',
      text: 'other: ambulance',
    });
  });

  test('the card is read screen by screen, and the last screen stays', () => {
    let run = press(beginWith(script), { is: 'emergency', emergency: 'faint' });
    const pages = screen(run).card?.pages ?? 0;
    for (let page = 0; page < pages + 3; page += 1) {
      expect(screen(run).large.every(({ rows }) => rows.length >= 1 && rows.length <= 2)).toBe(true);
      run = press(run, { is: 'forward' });
    }
    expect(screen(run).card?.page).toBe(pages - 1);
  });

  test('an exit is broken off only out of a stop or an emergency, with a reason', () => {
    const run = beginWith(script);
    expect(press(run, { is: 'break-off', reason: 'fire' }).state.refusal).toBe('not-now');
    const fire = press(run, { is: 'emergency', emergency: 'fire' });
    expect(press(fire, { is: 'break-off', reason: '' }).state.refusal).toBe('reason-missing');
    const off = press(fire, { is: 'break-off', reason: 'evacuated' });
    expect(off.state.core.ended?.how).toBe('broken-off');
    expect(screen(off).outcome).toBe('not-all-seen');
  });
});

describe('handing over', () => {
  test('takes two: the receiver says which line was answered last, and only then reads', () => {
    const run = readTo(beginWith(script), 'rub/look');
    const asked = press(run, { is: 'hand-over', to: 'p-obs2' });
    expect(screen(asked)).toMatchObject({ phase: 'hand-over', handover: { to: 'p-obs2' } });
    expect(press(asked, { is: 'take-over', line: 0 }, 'p-obs2').state.refusal).toBe('other-line');
    expect(press(asked, { is: 'take-over', line: 0 }, 'p-else').state.refusal).toBe('not-now');
    const taken = press(asked, { is: 'take-over', line: run.state.core.lastAnswered }, 'p-obs2');
    expect(taken.stored.at(-1)).toMatchObject({
      kind: 'exit.handed-over',
      by: 'p-obs2',
      body: { from: OBSERVER, to: 'p-obs2', role: 'observer' },
    });
    expect(press(taken, { is: 'start-timer' }).state.refusal).toBe('observer-only');
    expect(press(taken, { is: 'start-timer' }, 'p-obs2').state.refusal).toBeNull();
    expect(screen(press(asked, { is: 'keep' })).phase).toBe('reading');
  });
});

describe('a donning', () => {
  const wear = { limitMinutes: 60, warnMinutes: 15, source: 'Our heat rule (invented)' };
  const donning = scriptOf(setupOf(SMALL_DONNING, { wear }));

  test('asks for the look all round before the entry, and for a reason where something is bare', () => {
    const look = readTo(beginWith(donning), 'end/all-round');
    expect(screen(look).notices).toContain('left-bare');
    expect(press(look, { is: 'seen' }).state.refusal).toBe('reason-missing');
    expect(press(look, { is: 'not-seen' }).state.refusal).toBe('reason-missing');
    const inside = press(look, { is: 'seen', reason: 'a drill of two steps' });
    expect(inside.stored.map(({ kind }) => kind)).toContain('room.entered');
    expect(screen(inside).line.kind).toBe('inside');
    expect(inside.state.core.deviations).toHaveLength(1);
  });

  test('writes with the way in what was read on the packs before, and nothing where nobody read it', () => {
    const packs = [{ item: 'gown', size: 'L', lot: null }];
    for (const [unit, items] of [
      [{ wear, packs }, packs],
      [{ wear }, []],
    ] as const) {
      const look = readTo(beginWith(scriptOf(setupOf(SMALL_DONNING, unit))), 'end/all-round');
      const inside = press(look, { is: 'seen', reason: 'a drill' });
      const way = inside.stored.find(({ kind }) => kind === 'room.entered');
      expect(way?.body).toMatchObject({ items });
    }
  });

  test('keeps the time in the suit, warns, and ends when the wearer is out', () => {
    const inside = press(readTo(beginWith(donning), 'end/all-round'), { is: 'seen', reason: 'a drill' });
    expect(screen(inside).timers.map(({ id, seconds }) => [id, seconds])).toEqual([
      ['wear-warning', 45 * 60],
      ['wear', 60 * 60],
    ]);
    const warned = wait(inside, 45 * 60);
    expect(doing(warned, 'sound')).toEqual([{ do: 'sound', what: 'warning' }]);
    expect(screen(warned).timers.map(({ id }) => id)).toEqual(['wear']);
    const out = press(warned, { is: 'leave' });
    expect(kinds(out).slice(-3)).toEqual(['room.left', 'exit.timer-ended', 'exit.ended']);
    expect(screen(warned).timers[0]?.source).toBe(wear.source);
    expect(screen(warned).wear.limit).toEqual(wear);
    const none = beginWith(scriptFor(SMALL_DONNING));
    expect(screen(none).notices).toContain('no-wear-limit');
    expect(screen(none).wear.published.map((id) => evidence(id).status)).toContain('published');
  });

  test('a doffing goes on counting what was spent in the suit', () => {
    const suited = scriptOf(setupOf(SMALL, { wear }));
    const run = started(begin(suited, PEOPLE, { is: 'drill' }, { ...OCCASION, inSuit: 50 * 60 }));
    expect(screen(run).timers.map(({ id, seconds }) => [id, seconds])).toEqual([
      ['wear-warning', 0],
      ['wear', 10 * 60],
    ]);
    const ended = press(readTo(run, 'end/finish'), { is: 'end' });
    expect(ended.state.core.ended?.how).toBe('finished');
  });
});

test('two rooms at once are two states that know nothing of each other', () => {
  const one = beginWith(script);
  const other = started(
    begin(script, { ...PEOPLE, wearer: 'p-wea2' }, { is: 'drill' }, { ...OCCASION, exit: 'x2' }),
  );
  const after = press(one, { is: 'stop' });
  expect(after.state.core.stopped).not.toBeNull();
  expect(other.state.core.stopped).toBeNull();
  expect(onward(other).stored.every(({ id }) => id.startsWith('x2.'))).toBe(true);
});
