// What the scene does not show and the rest of a doffing depends on: what was used up, and the few facts
// of the past that practice rules ask of later steps. Two partial orders with equal scene and flags can go on alike.
import type { Layer } from '../contacts/body.ts';
import type { Scene } from '../contacts/scene.ts';

export interface Flags {
  /** Which subject's turn it is. */
  readonly subject: number;
  readonly begun: boolean;
  readonly wiped: boolean;
  /** Glove changes made. */
  readonly changes: number;
  /** Pinned steps done. */
  readonly pinned: number;
  /** Clean chairs sat on in foot covers, sorted, each as often as it was (practice.clean-and-dirty-chair-apart). */
  readonly chairs: string;
  /** Fresh gloves since the first garment went (practice.glove-change-before-respirator). */
  readonly fresh: boolean;
  /** The subject's hands met something since they were cleaned, so that the next move begins with hygiene. */
  readonly due: boolean;
  /** People whose hands did nothing since they were cleaned, sorted, while there is a zip (practice.hygiene-around-zip). */
  readonly clean: string;
}

export const FIRST: Flags = {
  subject: 0,
  begun: false,
  wiped: false,
  changes: 0,
  pinned: 0,
  chairs: '',
  fresh: false,
  due: false,
  clean: '',
};

export function flagsKey({
  subject,
  begun,
  wiped,
  changes,
  pinned,
  chairs,
  fresh,
  due,
  clean,
}: Flags): string {
  return `${subject}${begun ? 'b' : ''}${wiped ? 'w' : ''}${fresh ? 'f' : ''}${due ? 'd' : ''}/${changes}/${pinned}/${chairs}/${clean}`;
}

const EACH_SUBJECT = 1000;
const EACH_PINNED = 20;

const kinds = (layers: readonly Layer[]): number => new Set(layers.map(({ item }) => item)).size;

/**
 * How far a doffing is: grows with every move and is the same for every way to the same scene. Helpers' hygiene is numbered by
 * it, so that what an imperfect last rub left on their hands is one condition in whatever order the items went.
 */
export function rankOf(
  scene: Scene,
  flags: Flags,
  subject: { readonly id: string; readonly route: readonly string[] } | undefined,
): number {
  const worn = Object.values(scene.bodies).reduce(
    (sum, { layers }) => sum + kinds(layers) + kinds(layers.filter(({ fastened }) => fastened)),
    0,
  );
  const way = subject ? subject.route.indexOf(scene.bodies[subject.id]?.zone ?? '') : 0;
  const own = Number(flags.begun) + Number(flags.wiped) + flags.changes + way;
  return (1 + flags.subject) * EACH_SUBJECT + flags.pinned * EACH_PINNED + own - worn;
}
