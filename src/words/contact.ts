// How two surfaces of a route met, and in which order a sentence names them: the same in every language. A hand touches,
// a sole stands, a lining lies; only what that is called differs.
import { itemKind, type ItemId } from '../domain/items.ts';
import { placeName, type Side, sideOf } from '../domain/places.ts';
import { namedBy } from './surfaces.ts';
import type { Setting } from './words.ts';

/** A hand at that moment, and what is on it: bare where `worn` is absent. */
export interface Hand {
  readonly person: string;
  readonly side: Side;
  readonly worn?: ItemId;
}

/** Which hand a surface is; undefined where it is none. */
export function handOf(setting: Setting, id: string): Hand | undefined {
  const named = namedBy(setting, id);
  if (named.at === 'place' && placeName(named.place) === 'hand') {
    const side = sideOf(named.place);
    return side && { person: named.person, side };
  }
  if (named.at !== 'item' || named.side === undefined || named.part !== 'outside') return undefined;
  if (itemKind(named.item).group !== 'glove') return undefined;
  return { person: named.person, side: named.side, worn: named.item };
}

/** `one` is who does it: touches, stands on, lies on; for a leak the outside that what is on it comes from. */
export interface Contact {
  readonly kind: 'leaks' | 'stands' | 'lies' | 'touches';
  readonly one: string;
  readonly other: string;
}

const isLeak = (setting: Setting, from: string, to: string): boolean => {
  const [outer, inner] = [handOf(setting, from), handOf(setting, to)];
  return outer?.worn !== undefined && inner?.person === outer.person && inner.side === outer.side;
};

const isGround = (setting: Setting, id: string): boolean => {
  const named = namedBy(setting, id);
  return named.at === 'fixture' && (named.fixture.kind === 'floor' || named.fixture.kind === 'mat');
};

function isSole(setting: Setting, id: string): boolean {
  const named = namedBy(setting, id);
  return (named.at === 'item' && named.part === 'sole') || /\.sole\.(left|right)$/.test(id);
}

/** A lining against what it covers. */
function isLining(setting: Setting, id: string): boolean {
  const named = namedBy(setting, id);
  return (
    named.at === 'item' &&
    (named.part?.startsWith('inside') ?? false) &&
    itemKind(named.item).group !== 'glove'
  );
}

/** The contact by which contamination went from one surface to another: a hand is named before anything else. */
export function contactOf(setting: Setting, from: string, to: string): Contact {
  const forth = { one: from, other: to };
  const back = { one: to, other: from };
  if (isLeak(setting, from, to)) return { kind: 'leaks', ...forth };
  // A hand at a lining touches it, it does not lie on it.
  if (handOf(setting, from)) return { kind: 'touches', ...forth };
  if (handOf(setting, to)) return { kind: 'touches', ...back };
  if (isSole(setting, from) && isGround(setting, to)) return { kind: 'stands', ...forth };
  if (isSole(setting, to) && isGround(setting, from)) return { kind: 'stands', ...back };
  if (isLining(setting, from)) return { kind: 'lies', ...forth };
  if (isLining(setting, to)) return { kind: 'lies', ...back };
  return { kind: 'touches', ...forth };
}

export type StartReason =
  | { readonly why: 'stated'; readonly reason?: string }
  | { readonly why: 'faced' | 'patient-side' | 'sat-on' | 'touched' };

/** Why a surface counts as contaminated before anybody has moved. */
export function startReason(setting: Setting, surface: string): StartReason {
  const stated = setting.start.find((state) => state.surface === surface);
  if (stated)
    return {
      why: 'stated',
      ...(stated.reason === undefined ? {} : { reason: stated.reason.replace(/\.$/, '') }),
    };
  const named = namedBy(setting, surface);
  if (named.at !== 'fixture') return { why: 'faced' };
  const side = setting.zones.find((zone) => zone.id === named.fixture.zone)?.side;
  if (side === 'patient') return { why: 'patient-side' };
  return { why: named.fixture.kind === 'chair' ? 'sat-on' : 'touched' };
}
