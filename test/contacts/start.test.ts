// Where contamination starts (evidence: every study with a tracer takes what faced the patient as contaminated; Kwon 2017 and
// Suen 2018 for floors, chairs and levers), what the file states instead, and how a donning starts.
import { describe, expect, it } from 'vitest';
import type { ItemId } from '../../src/domain/items.ts';
import type { StartingState } from '../../src/domain/procedure.ts';
import type { Fixture } from '../../src/domain/room.ts';
import { FIXTURES, person, procedure } from '../support/procedure.ts';
import { compiledOf, doffing, linesOf, soiledAfter } from './support.ts';

/** How each surface of these items starts: 'true', the key of the circumstance, or absent. */
function starts(wears: readonly ItemId[], start: readonly StartingState[] = []): ReadonlyMap<string, string> {
  const compiled = compiledOf(doffing(wears, [], { start }));
  const taints = linesOf(compiled, undefined).filter((line) => line.startsWith('taint '));
  return new Map(
    taints.map((line) => {
      const [surface = '', when] = line.slice('taint '.length).split(' if ');
      return [surface, when ?? 'true'];
    }),
  );
}

describe('what the wearer brings', () => {
  const gown = starts(['inner-gloves', 'gown', 'outer-gloves']);

  it.each(['gown.front', 'gown.skirt', 'gown.sleeve-left', 'outer-gloves.left.outside', 'shoes.left.upper'])(
    '%s faced the patient: contaminated',
    (surface) => {
      expect(gown.get(`wearer.${surface}`)).toBe('true');
    },
  );

  it.each([
    ['gown.back', 'start:soiled-back:wearer.gown.back'],
    ['gown.neck-tie', 'start:soiled-strap:wearer.gown.neck-tie'],
  ])('%s looked away: maybe', (surface, key) => {
    expect(gown.get(`wearer.${surface}`)).toBe(key);
  });

  it.each([
    'gown.cuff-left',
    'gown.inside',
    'gown.inside-sleeves',
    'inner-gloves.left.outside',
    'inner-gloves.left.inside',
    'scrubs.front',
    'hand.left',
    'face',
  ])('%s was enclosed or underneath: not', (surface) => {
    expect(gown.has(`wearer.${surface}`)).toBe(false);
  });

  it('an apron drapes and a shield stands off: neither encloses', () => {
    expect(starts(['gown', 'apron']).get('wearer.gown.front')).toBe('true');
    expect(starts(['n95-respirator', 'face-shield']).get('wearer.n95-respirator.front')).toBe('true');
    expect(starts(['n95-respirator', 'powered-hood']).has('wearer.n95-respirator.front')).toBe(false);
    expect(starts(['goggles', 'surgical-hood']).has('wearer.goggles.strap')).toBe(false);
  });

  it('what covers no place of its own is enclosed with the places it runs over', () => {
    expect(starts(['cap', 'surgical-hood']).has('wearer.cap.rear')).toBe(false);
    expect(starts(['cap']).get('wearer.cap.rear')).toBe('start:soiled-strap:wearer.cap.rear');
    expect(starts(['coverall', 'gown']).has('wearer.coverall.zip')).toBe(false);
    expect(starts(['coverall', 'apron']).get('wearer.coverall.zip')).toBe('true');
    expect(starts(['blower', 'gown']).has('wearer.blower.hose')).toBe(false);
  });

  it('gloves may have worn through, a pair at a time; helpers have a pinhole at most', () => {
    const { plan } = compiledOf(
      procedure({
        people: [
          person({ id: 'wearer', role: 'wearer', wears: ['gloves'] }),
          person({ id: 'assistant', role: 'assistant', wears: ['gloves', 'gown'] }),
        ],
        steps: [],
      }),
    );
    const keys = plan.events.map(({ key }) => key);
    expect(keys).toContain('start:worn-through:wearer.gloves');
    expect(keys).toContain('start:pinhole:assistant.gloves');
    expect(keys.filter((key) => key.includes('assistant'))).toHaveLength(1);
  });
});

describe('who else comes out of the room (an assistant by name, a colleague in care until then)', () => {
  const at = (starts: string) => {
    const compiled = compiledOf(
      procedure({
        people: [
          person({ id: 'wearer', role: 'wearer', wears: ['gloves'] }),
          person({
            id: 'assistant',
            role: 'assistant',
            starts,
            wears: ['inner-gloves', 'gown', 'outer-gloves'],
          }),
        ],
        steps: [],
      }),
    );
    return { soiled: soiledAfter(compiled, undefined), keys: compiled.plan.events.map(({ key }) => key) };
  };

  it('is as contaminated as the wearer', () => {
    const { soiled, keys } = at('room');
    expect(soiled).toContain('assistant.gown.front');
    expect(soiled).toContain('assistant.outer-gloves.left.outside');
    expect(soiled).not.toContain('assistant.inner-gloves.left.outside');
    expect(keys).toContain('start:worn-through:assistant.inner-gloves');
  });

  it('who waits in the doffing area is not', () => {
    expect(at('anteroom').soiled).not.toContain('assistant.gown.front');
  });
});

describe('what the file states wins', () => {
  const state = (surface: string, as: StartingState['state']) =>
    starts(['gown'], [{ surface, state: as }]).get(surface);

  it.each(['wearer.gown.front', 'wearer.gown.back', 'wearer.gown.inside'])('%s', (surface) => {
    expect(state(surface, 'contaminated')).toBe('true');
    expect(state(surface, 'uncontaminated')).toBeUndefined();
    expect(state(surface, 'maybe')).toBe(`start:stated-maybe:${surface}`);
  });

  it('also of the room', () => {
    expect(state('room.chair.seat', 'uncontaminated')).toBeUndefined();
    expect(state('room.clean-chair.seat', 'contaminated')).toBe('true');
    expect(state('room.room-floor.surface', 'maybe')).toBe('start:stated-maybe:room.room-floor.surface');
  });

  it('of a hand in a donning is what it is judged by', () => {
    const compiled = compiledOf(
      procedure({
        kind: 'donning',
        people: [person({ id: 'wearer', role: 'wearer' })],
        steps: [],
        start: [{ surface: 'wearer.hand.left', state: 'uncontaminated' }],
      }),
    );
    expect(linesOf(compiled, undefined)).toContain('taint wearer.hand.right if start:unclean-hands:wearer');
    expect(linesOf(compiled, undefined).some((line) => line.includes('wearer.hand.left'))).toBe(false);
  });
});

describe('the room', () => {
  const room = (...more: readonly Fixture[]) => {
    const compiled = compiledOf(doffing([], [], { fixtures: [...FIXTURES, ...more] }));
    return new Set(linesOf(compiled, undefined).filter((line) => line.startsWith('taint room.')));
  };

  it("the patient's floor and fixtures are contaminated, the doffing area's are not", () => {
    const found = room(
      { id: 'rail', kind: 'rail', zone: 'room', clean: false },
      { id: 'table', kind: 'table', zone: 'anteroom', clean: false },
      { id: 'kept', kind: 'table', zone: 'room', clean: true },
    );
    expect(found).toContain('taint room.room-floor.surface');
    expect(found).toContain('taint room.rail.grip');
    expect(
      [...found].filter(
        (line) => line.includes('table') || line.includes('kept') || line.includes('anteroom'),
      ),
    ).toEqual([]);
  });

  it('a chair that is not the clean one is, the clean one is not', () => {
    expect(room()).toContain('taint room.chair.seat');
    expect([...room()].some((line) => line.includes('clean-chair'))).toBe(false);
  });

  it('a lever worked by hand may be', () => {
    const lever = room({ id: 'tap', kind: 'tap', zone: 'anteroom', clean: false, worked: 'hand' });
    expect(lever).toContain('taint room.tap.handle if start:dirty-lever:room.tap.handle');
  });

  it('the first sole that stands on the floor soils it, and with it who stands there', () => {
    const shared = compiledOf(
      procedure({
        people: [person({ id: 'observer', role: 'observer' }), person({ id: 'wearer', role: 'wearer' })],
        steps: [],
      }),
    );
    expect(soiledAfter(shared, undefined)).toContain('room.anteroom-floor.surface');
  });
});

describe('a donning', () => {
  it('starts with everything clean but hands that may not be', () => {
    const compiled = compiledOf(
      procedure({
        kind: 'donning',
        people: [person({ id: 'wearer', role: 'wearer', starts: 'corridor' })],
        steps: [],
      }),
    );
    expect(compiled.plan.events.map(({ key }) => key)).toEqual(['start:unclean-hands:wearer']);
    expect([...soiledAfter(compiled, undefined)]).toEqual([]);
    expect([...soiledAfter(compiled, undefined, 'start:unclean-hands:wearer')].sort()).toEqual([
      'wearer.hand.left',
      'wearer.hand.right',
    ]);
  });
});
