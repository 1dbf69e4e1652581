// One object for all scenes, bodies and steps that are equal, so that what was worked out is found again by two look-ups and
// no text; and what a step can tell of a scene, so that it is worked out once for all scenes that it cannot tell apart.
import type { Step } from '../domain/procedure.ts';
import { type Body, outermost } from './body.ts';
import { presentIn } from './frame.ts';
import { bodyKey, type Scene } from './scene.ts';

interface Known<T> {
  readonly one: T;
  readonly number: number;
}

/** Numbers things by text; the first of equal ones stands for them, and alone is known without its text. */
class Standing<T extends object> {
  readonly #text: (one: T) => string;
  readonly #known = new Map<T, Known<T>>();
  readonly #texts = new Map<string, Known<T>>();

  constructor(text: (one: T) => string) {
    this.#text = text;
  }

  of(one: T): Known<T> {
    const found = this.#known.get(one);
    if (found) return found;
    const text = this.#text(one);
    const standing = this.#texts.get(text);
    if (standing) return standing;
    const made = { one, number: this.#texts.size };
    this.#texts.set(text, made);
    this.#known.set(one, made);
    return made;
  }
}

/** The scene of these bodies: the given one where they are its own. */
const made = (scene: Scene, known: readonly Known<Body>[]): Scene =>
  known.every(({ one }) => scene.bodies[one.id] === one)
    ? scene
    : { bodies: Object.fromEntries(known.map(({ one }) => [one.id, one])) };

const numbers = (known: readonly Known<Body>[]): string => known.map(({ number }) => number).join(' ');

/** Steps are plain: texts, and a list of items. Not compared as text, for most are met for the first time. */
const isSame = (one: Step, other: Step): boolean => {
  const keys = Object.keys(one) as (keyof Step)[];
  return (
    keys.length === Object.keys(other).length && keys.every((key) => String(one[key]) === String(other[key]))
  );
};

/** All that others can meet of somebody who takes no part: the soles, and what they stand on. */
const feetOf = (body: Body): string =>
  `${body.standing}/${body.seated ?? ''}/${outermost(body, 'sole.left')}/${outermost(body, 'sole.right')}`;

export class Sameness {
  readonly #steps = new Map<Step, number>();
  readonly #stepsById = new Map<string, Step[]>();
  readonly #bodies = new Standing<Body>(bodyKey);
  readonly #feet = new Standing<Body>(feetOf);
  readonly #scenes = new Set<Scene>();
  readonly #sceneTexts = new Map<string, Scene>();

  step(step: Step): Step {
    if (this.#steps.has(step)) return step;
    const ofId = this.#stepsById.get(step.id) ?? [];
    const known = ofId.find((other) => isSame(other, step));
    if (known) return known;
    this.#stepsById.set(step.id, [...ofId, step]);
    this.#steps.set(step, this.#steps.size);
    return step;
  }

  scene(scene: Scene): Scene {
    if (this.#scenes.has(scene)) return scene;
    const known = Object.values(scene.bodies).map((body) => this.#bodies.of(body));
    const text = numbers(known);
    const standing = this.#sceneTexts.get(text) ?? made(scene, known);
    this.#sceneTexts.set(text, standing);
    this.#scenes.add(standing);
    return standing;
  }

  /** Of a step and a scene that stand for their likes. Equal where the step does the same: everything of those who take part, the feet of the others. */
  telling(scene: Scene, step: Step): string {
    const present = presentIn(step);
    const seen = Object.values(scene.bodies).map((body) =>
      present.includes(body.id) ? this.#bodies.of(body).number : `f${this.#feet.of(body).number}`,
    );
    return `${this.#steps.get(step)}:${seen.join(' ')}`;
  }
}
