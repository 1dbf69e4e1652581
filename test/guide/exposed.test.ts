// What is said after a slip for which no better way on was found: that none was, what of the body may be contaminated, and that
// the unit's plan comes first; until a card that fits it was opened.
import { describe, expect, test } from 'vitest';
import type { EmergencyId } from '../../src/domain/emergencies.ts';
import { evidenceNumber } from '../../src/evidence/index.ts';
import { type Found, screenOf } from '../../src/guide/index.ts';
import { beginWith, NOON, press, readTo, type Run, scriptFor, SMALL, tell } from './support.ts';

const screen = (run: Run) => screenOf(run.state);
const looking = readTo(beginWith(scriptFor(SMALL)), 'gloves-off/look');
const slipped = press(looking, { is: 'slip', event: 'gloves-off:wrong-grip' });
const answer = (run: Run, found: Found): Run =>
  tell(run, { is: 'continuation', search: run.state.search?.id ?? '', found, at: NOON, by: null });

describe('no better way on', () => {
  test('is said while the step behind the slip is the next, and no longer', () => {
    expect(screen(slipped)).toMatchObject({ searching: true, sought: null });
    const told = answer(slipped, null);
    expect(screen(told)).toMatchObject({ searching: false, sought: 'nothing-better' });
    const read = readTo(told, 'rub/read');
    expect(screen(read).sought).toBe('nothing-better');
    expect(screen(readTo(read, 'rub/look')).sought).toBeNull();
  });

  test('is not what is said where it could not be worked out', () => {
    expect(screen(answer(slipped, 'not-worked-out')).sought).toBe('not-worked-out');
  });

  test('is asked anew by the next slip', () => {
    const again = press(answer(slipped, null), { is: 'deviation', category: 'lost-balance' });
    expect(screen(again)).toMatchObject({ searching: true, sought: null });
  });
});

describe('the body may be contaminated', () => {
  const touched = press(looking, {
    is: 'deviation',
    category: 'touched-clean-thing',
    surfaces: ['wearer.hand.left'],
  });

  test('where something protected was reached, and where one slip that nobody saw would do', () => {
    expect(screen(touched).exposed?.surfaces).toContain('wearer.hand.left');
    const told = screen(slipped);
    const worse = told.suspects?.filter((one) => one.protected) ?? [];
    expect(worse.map(({ needs }) => needs)).toContain(0);
    expect(told.exposed?.surfaces).toEqual(
      worse.filter(({ needs }) => needs <= evidenceNumber('guide.exposure')).map(({ surface }) => surface),
    );
  });

  test('after a hand to the face of which nobody said where', () => {
    const face = press(looking, { is: 'deviation', category: 'touched-face' });
    expect(screen(face).exposed).toMatchObject({ unplaced: ['touched-face'] });
  });

  test('not after what only broke the order', () => {
    expect(screen(press(looking, { is: 'deviation', category: 'ran-ahead' })).exposed).toBeNull();
  });

  const open = (run: Run, emergency: EmergencyId): Run =>
    press(press(run, { is: 'emergency', emergency }), { is: 'return' });

  test('until a card that fits was opened, whatever other card was', () => {
    const hand = screen(open(touched, 'glove-tear')).exposed;
    expect(hand?.surfaces).toContain('wearer.hand.left');
    expect(hand?.cards).toContain('splash-skin');
    expect(screen(open(touched, 'splash-face')).exposed?.surfaces).toContain('wearer.hand.left');
    expect(screen(open(open(touched, 'splash-face'), 'splash-skin')).exposed).toBeNull();
  });

  test('and is not forgotten as reached once its card was opened', () => {
    const both = screen(open(open(touched, 'splash-face'), 'sharps'));
    expect(both.exposed).toBeNull();
    expect(both.reached?.surfaces).toContain('wearer.hand.left');
  });

  test('a card that was opened before the slip does not count', () => {
    const early = press(open(looking, 'splash-face'), { is: 'deviation', category: 'touched-face' });
    expect(screen(early).exposed).toMatchObject({ unplaced: ['touched-face'], cards: ['splash-face'] });
  });

  test('what was dealt with does not come back with a slip that reaches nothing of it', () => {
    const dealt = open(open(touched, 'splash-face'), 'splash-skin');
    expect(screen(press(dealt, { is: 'deviation', category: 'lost-balance' })).exposed).toBeNull();
    const again = press(dealt, {
      is: 'deviation',
      category: 'touched-clean-thing',
      surfaces: ['wearer.hand.right'],
    });
    expect(screen(again).exposed?.surfaces).toContain('wearer.hand.right');
    expect(screen(again).exposed?.surfaces).not.toContain('wearer.hand.left');
  });

  test('a hand to the face outlasts the card of a torn glove and a hand-over; a tear does not', () => {
    const face = open(press(looking, { is: 'deviation', category: 'touched-face' }), 'glove-tear');
    const over = press(face, { is: 'hand-over', to: 'p-other' });
    expect(screen(over).exposed).toMatchObject({ unplaced: ['touched-face'], cards: ['splash-face'] });
    const torn = press(looking, { is: 'deviation', category: 'item-torn' });
    expect(screen(torn).exposed).toMatchObject({ unplaced: ['item-torn'], cards: [] });
    expect(screen(open(torn, 'glove-tear')).exposed).toBeNull();
  });
});
