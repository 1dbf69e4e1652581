// The invented exit by which speed is watched must stay what its name says, or its numbers mean something else.
import { expect, test } from 'vitest';
import { hundred } from '../../bench/hundred.ts';
import { compile } from '../../src/contacts/interpret.ts';
import { itemKind } from '../../src/domain/items.ts';
import { AGENTS } from '../../src/domain/products.ts';

test('has 100 steps, three people in equipment, and no step that cannot be done', () => {
  const procedure = hundred();
  expect(procedure.steps).toHaveLength(100);
  expect(procedure.people.map(({ role }) => role)).toEqual(['wearer', 'observer', 'assistant']);
  for (const agent of AGENTS) {
    const compiled = compile(procedure, agent);
    expect(compiled.problems).toEqual([]);
    const bodies = Object.values(compiled.performed.at(-1)?.after.bodies ?? {});
    expect(bodies.flatMap(({ layers }) => layers).filter(({ item }) => !itemKind(item).underneath)).toEqual(
      [],
    );
  }
});
