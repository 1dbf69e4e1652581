// The same procedure with every person, zone, fixture and, if wished, every step called otherwise: nothing of it has changed.
import type { Procedure } from '../../src/domain/procedure.ts';

const OTHER = 'other-';

/** `steps`: give the steps other ids too. */
export function renamedProcedure(from: Procedure, steps: boolean): Procedure {
  const name = (id: string): string => `${OTHER}${id}`;
  const maybe = (id: string | undefined): string | undefined => (id === undefined ? undefined : name(id));
  const surface = (id: string): string => {
    const [owner = '', ...rest] = id.split('.');
    return owner === 'room'
      ? ['room', name(rest[0] ?? ''), ...rest.slice(1)].join('.')
      : [name(owner), ...rest].join('.');
  };
  const stepId = (id: string): string => (steps ? name(id) : id);
  const given = <Value extends object>(value: Value): Value =>
    Object.fromEntries(Object.entries(value).filter(([, inner]) => inner !== undefined)) as Value;
  return {
    ...from,
    people: from.people.map((person) => ({ ...person, id: name(person.id), starts: name(person.starts) })),
    zones: from.zones.map((zone) => ({ ...zone, id: name(zone.id) })),
    fixtures: from.fixtures.map((fixture) => ({
      ...fixture,
      id: name(fixture.id),
      zone: name(fixture.zone),
    })),
    start: from.start.map((entry) => ({ ...entry, surface: surface(entry.surface) })),
    accepted: from.accepted.map((one) =>
      given({
        ...one,
        step: one.step === undefined ? undefined : stepId(one.step),
        surface: one.surface === undefined ? undefined : surface(one.surface),
      }),
    ) as Procedure['accepted'],
    steps: from.steps.map((step) =>
      given({
        ...step,
        id: stepId(step.id),
        who: name(step.who),
        of: maybe(step.of),
        helper: maybe(step.helper),
        fixture: maybe(step.fixture),
        zone: maybe(step.zone),
      }),
    ) as Procedure['steps'],
  };
}
