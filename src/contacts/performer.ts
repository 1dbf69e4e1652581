// Steps worked out in scenes, for whoever asks: each once, against whatever agent, and again for the next edit of the same
// procedure. What is done hangs on the people, the room and the policy, never on the steps before but through the scene.
import { itemKind } from '../domain/items.ts';
import type { Procedure, Step } from '../domain/procedure.ts';
import { type Technique, techniqueOf, usualTechnique } from '../domain/techniques/index.ts';
import { indexOf, partSurface } from './body.ts';
import { type Frame, itemSides, owner, presentIn, problem, surface } from './frame.ts';
import { type Names, namesFor } from './names.ts';
import { checkCleaned, checkNeeds } from './needs.ts';
import { perform } from './perform.ts';
import type { Acted, Asked } from './performed.ts';
import { Sameness } from './sameness.ts';
import { bodyIn, type Scene, sceneOf } from './scene.ts';
import { settle } from './settle.ts';
import { begin } from './start.ts';

export interface Performer {
  readonly names: Names;
  readonly start: Acted;
  /** The one scene that stands for all that are equal to it. */
  scene(scene: Scene): Scene;
  /** What a step does in one of those scenes. */
  act(scene: Scene, step: Step): Acted;
}

/** How many steps in scenes a performer knows when it is kept no longer. */
const MOST_ACTS = 20_000;

const NONE: Technique = { id: 'none', action: 'say', groups: [], moves: [], time: 'duration.say' };

const techniqueFor = (step: Step): Technique | undefined =>
  step.technique === undefined ? usualTechnique(step.action, step.items) : techniqueOf(step.technique);

/** Equipment put on comes from its box or rack: nothing that happened to the last one counts. What is on stays as it is. */
function unpack(frame: Frame): void {
  if (frame.step.action !== 'put-on') return;
  for (const item of frame.step.items) {
    for (const side of itemSides(frame, 'both', item)) {
      if (indexOf(owner(frame), item, side) >= 0) continue;
      const layer = side ? { item, side } : { item };
      for (const part of itemKind(item).parts) {
        frame.operations.push({ op: 'fresh', a: surface(frame, partSurface(owner(frame).id, layer, part)) });
      }
    }
  }
}

function performStep(frame: Frame): void {
  checkNeeds(frame);
  unpack(frame);
  for (const move of frame.technique.moves) perform(frame, move);
  checkCleaned(frame);
  settle(frame);
}

const frameFor = (procedure: Procedure, names: Names, scene: Scene, step: Step): Frame => ({
  procedure,
  names,
  step,
  technique: techniqueFor(step) ?? NONE,
  before: scene,
  scene,
  operations: [],
  credits: [],
  problems: [],
  surfaces: [],
  events: [],
  gone: new Set(),
});

/** Each event once; one that is asked about in any case, in any case. */
function once(asked: readonly Asked[]): readonly Asked[] {
  if (asked.length < 2) return asked;
  const found = new Map<number, Asked>();
  for (const one of asked)
    if (found.get(one.event)?.credit || !found.has(one.event)) found.set(one.event, one);
  return [...found.values()];
}

const actedIn = ({ operations, credits, problems, technique, scene, surfaces, events }: Frame): Acted => ({
  operations,
  credits,
  problems,
  technique,
  after: scene,
  surfaces,
  events: once(events),
});

function opening(procedure: Procedure, names: Names): Acted {
  const who = procedure.people[0]?.id ?? '';
  const frame = frameFor(procedure, names, sceneOf(procedure), {
    id: 'start',
    who,
    action: 'say',
    items: [],
  });
  begin(frame);
  return actedIn(frame);
}

function worked(procedure: Procedure, names: Names, scene: Scene, step: Step): Acted {
  const frame = frameFor(procedure, names, scene, step);
  if (frame.technique === NONE)
    problem(frame, 'technique-unclear', { action: step.action, item: step.items[0] ?? '' });
  performStep(frame);
  return actedIn(frame);
}

/** The scene in which a step leaves those who take part; the others are as they were. */
function leaving(before: Scene, { after }: Acted, step: Step): Scene {
  const changed = presentIn(step).map((id) => [id, bodyIn(after, id)] as const);
  return { bodies: { ...before.bodies, ...Object.fromEntries(changed) } };
}

/** `full` is called when it has grown too large to be kept for others; whoever has it goes on with it. */
function performerOf(procedure: Procedure, full: () => void): Performer {
  const names = namesFor(procedure);
  const same = new Sameness();
  const acts = new Map<Scene, Map<Step, Acted>>();
  const told = new Map<string, Acted>();
  let met = 0;
  const opened = opening(procedure, names);
  const act = (before: Scene, step: Step): Acted => {
    const text = same.telling(before, step);
    const known = told.get(text);
    if (known) return { ...known, after: same.scene(leaving(before, known, step)) };
    const done = worked(procedure, names, before, step);
    const acted = { ...done, after: same.scene(done.after) };
    told.set(text, acted);
    return acted;
  };
  return {
    names,
    start: { ...opened, after: same.scene(opened.after) },
    scene: (scene) => same.scene(scene),
    act(before, given) {
      const step = same.step(given);
      const inScene = acts.get(before) ?? new Map<Step, Acted>();
      if (inScene.size === 0) acts.set(before, inScene);
      const known = inScene.get(step);
      if (known) return known;
      const acted = act(before, step);
      inScene.set(step, acted);
      met += 1;
      if (met === MOST_ACTS) full();
      return acted;
    },
  };
}

/** Of each kind the last one: more of them, and clearing up after the check takes longer than they spare. */
const KEPT = new Map<Procedure['kind'], { readonly key: string; readonly performer: Performer }>();

/** The performer for a procedure; those with the same people, room and policy share theirs, whatever their steps. */
export function performerFor(procedure: Procedure): Performer {
  const { kind, people, zones, fixtures, products, start, policy } = procedure;
  const key = JSON.stringify([people, zones, fixtures, products, start, policy]);
  const kept = KEPT.get(kind);
  if (kept?.key === key) return kept.performer;
  const performer = performerOf(procedure, () => KEPT.delete(kind));
  KEPT.set(kind, { key, performer });
  return performer;
}
