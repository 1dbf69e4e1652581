// Whose hands meet something in a step, by a slip or without one: after that they want cleaning.
import type { Performed } from '../contacts/interpret.ts';
import { bodyIn } from '../contacts/scene.ts';
import { itemKind } from '../domain/items.ts';
import type { Step } from '../domain/procedure.ts';
import { handsOf, type Setting } from './setting.ts';

const GLOVES_AND_HANDS = new Map<string, boolean>();

/** Whether a surface is a hand or a glove. */
function isGloveOrHand(id: string): boolean {
  const known = GLOVES_AND_HANDS.get(id);
  if (known !== undefined) return known;
  const part = id.split('.')[1];
  const found = part === 'hand' || part?.endsWith('gloves') === true;
  GLOVES_AND_HANDS.set(id, found);
  return found;
}

const takesGlovesOff = ({ action, items }: Step): boolean =>
  action === 'remove' && items.some((item) => itemKind(item).group === 'glove');

/** A step's contact in which the hands of somebody meet anything but themselves, by a slip or without one. */
function handMeets(setting: Setting, { step, operations, before, after }: Performed, who: string): boolean {
  if (step.action === 'sanitise' || step.action === 'put-on') return false;
  const { registry } = setting.machine;
  const { surfaces } = registry;
  const hands = new Set(
    [before, after].flatMap((scene) => handsOf(bodyIn(scene, who)).map((id) => registry.surface(id))),
  );
  const own = (at: number): boolean => {
    const id = surfaces[at]?.id ?? '';
    return isGloveOrHand(id) && id.startsWith(`${who}.`);
  };
  return operations.some(
    (one) =>
      one.op === 'contact' &&
      (hands.has(one.a) || hands.has(one.b)) &&
      (takesGlovesOff(step) || !(own(one.a) && own(one.b))),
  );
}

const MET = new WeakMap<Performed, Map<string, boolean>>();

/** Whether somebody's hands meet anything in these steps; steps come back in many moves and are looked at once. */
export const handsMet = (setting: Setting, performed: readonly Performed[], who: string): boolean =>
  performed.some((one) => {
    const known = MET.get(one) ?? new Map<string, boolean>();
    MET.set(one, known);
    const found = known.get(who) ?? handMeets(setting, one, who);
    known.set(who, found);
    return found;
  });
