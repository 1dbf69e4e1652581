// Every claim V1 to V38, point by point: our answer is what the model says, and where the claim gives a size of its own
// and ours is another, the claim says why.
import { describe, expect, it } from 'vitest';
import { AGENTS } from '../../src/domain/products.ts';
import { evidence } from '../../src/evidence/index.ts';
import { CLAIMS, NOT_IN_THE_NOTE } from './claims.ts';

describe.each(CLAIMS)('$id $claim', ({ sources, points, verdict, why }) => {
  it('names its published source', () => {
    expect(sources.map((id) => evidence(id).id)).toEqual(sources);
    expect(sources.length).toBeGreaterThan(0);
  });

  it('says why, unless it agrees in full', () => {
    expect(why === undefined).toBe(verdict === 'agrees');
  });

  describe.each(points)('$asks', ({ ours, find }) => {
    it.each(AGENTS)('%s', (agent) => {
      expect(find(agent)).toBe(ours[agent]);
    });
  });
});

it('leaves no claim out: V1 to V38 but the two numbers that were never given', () => {
  const all = Array.from({ length: 38 }, (_, index) => `V${index + 1}`);
  expect(CLAIMS.map(({ id }) => id)).toEqual(all.filter((id) => !NOT_IN_THE_NOTE.includes(id)));
});
