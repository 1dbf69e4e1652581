// A move carried out in a scene, step by step, with its hygiene. Helpers clean their hands after it. The one who is undressed
// does so before the next move, under a name that says before which: so the conditions of all orders speak of the same rubs.
import type { Performed } from '../contacts/interpret.ts';
import { bodyIn, type Scene } from '../contacts/scene.ts';
import { type Side, SIDES } from '../domain/places.ts';
import type { Step } from '../domain/procedure.ts';
import type { Material } from '../domain/products.ts';
import { gloveOn } from '../practice/index.ts';
import type { Draft } from './drafts.ts';
import { handsMet } from './hands.ts';
import type { Node } from './nodes.ts';
import { productsFor, type Setting } from './setting.ts';

/** A move while it is carried out. */
export class Course {
  readonly performed: Performed[] = [];
  scene: Scene;
  /** Steps of hygiene for the move before. */
  owed = 0;
  readonly #setting: Setting;

  constructor(setting: Setting, scene: Scene) {
    this.#setting = setting;
    this.scene = scene;
  }

  /** False where the step cannot be done; nothing is done then. */
  act(step: Step): boolean {
    return this.#did(this.#setting.machine.perform(this.scene, step, 0));
  }

  #did(done: Performed): boolean {
    if (done.problems.length > 0) return false;
    this.performed.push(done);
    this.scene = done.after;
    return true;
  }

  /** Hand hygiene with the first product that can be had; none where the unit has none. */
  rub(who: string, number: string): void {
    const body = bodyIn(this.scene, who);
    const bare = (side: Side): boolean => gloveOn(body, side) === undefined;
    const materials = [...new Set(SIDES.map((side): Material => (bare(side) ? 'skin' : 'glove')))];
    for (const product of productsFor(this.#setting, materials)) {
      if (this.#did(this.#setting.rub(this.scene, who, product, `rub-${who}-${number}`))) return;
    }
  }

  /** Gloves that came into sight are looked over. */
  look(who: string, { name, kind }: Draft): void {
    const body = bodyIn(this.scene, who);
    const [glove, other] = SIDES.map((side) => gloveOn(body, side));
    if (glove === undefined || other !== glove) return;
    const step = { who, action: 'inspect', items: [glove] } as const;
    const base = `look-${name}`;
    const id = kind === 'off' ? this.#setting.named(base, step) : { id: this.#setting.unused(base) };
    this.act(this.#setting.step({ ...id, ...step }));
  }
}

/** The move's own steps; undefined where one of them cannot be done. */
export function bodyOf(setting: Setting, node: Node, draft: Draft, who: string): Course | undefined {
  const course = new Course(setting, node.scene);
  if (node.flags.due) {
    course.rub(who, `before-${draft.name}`);
    course.owed = course.performed.length;
  }
  for (const [at, step] of draft.steps.entries()) {
    if (step === 'rub') {
      if (at < draft.steps.length - 1) course.rub(who, draft.name);
    } else if (step === 'look') course.look(who, draft);
    else if (!course.act(step)) return undefined;
  }
  return course;
}

/** Hygiene after it of each helper whose hands met something. */
export function rubHelpers(setting: Setting, course: Course, who: string, number: string): void {
  const doers = course.performed.flatMap(({ step }) => [step.who, step.helper ?? step.who]);
  const last = (person: string): number =>
    course.performed.findLastIndex(({ step }) => step.action === 'sanitise' && step.who === person);
  for (const person of new Set(doers))
    if (person !== who && handsMet(setting, course.performed.slice(last(person) + 1), person))
      course.rub(person, number);
}
