// Between what is typed and what the journal keeps, and between what it keeps and what is read: times, minutes, rooms,
// equipment. Pure: clock and staff come in.
import type { Bodies } from '../../journal/kinds/index.ts';
import type { Asked, RoomRole } from '../../journal/kinds/rooms.ts';
import type { Stay } from '../../journal/views/stay.ts';
import { slugOf } from '../../versions/naming.ts';
import { LOG } from './labels.ts';

const MINUTE = 60_000;
const HOUR = 60;

const two = (number: number): string => String(number).padStart(2, '0');

/** As the browser's own field for a day and a time has it: the device's local time, to the minute. */
export function localOf(milliseconds: number): string {
  const at = new Date(milliseconds);
  const day = `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
  return `${day}T${two(at.getHours())}:${two(at.getMinutes())}`;
}

/** Milliseconds of a local day and time; undefined where it is none. */
export function millisecondsOf(local: string): number | undefined {
  const at = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}/.test(local) ? new Date(local).getTime() : Number.NaN;
  return Number.isNaN(at) ? undefined : at;
}

/** '14:05', with the day before it where it is another. */
export function clock(instant: string, now: number): string {
  const [day = '', time = ''] = localOf(Date.parse(instant)).split('T');
  return localOf(now).startsWith(day) ? time : `${day} ${time}`;
}

/** '1 h 05 min', whole minutes rounded up. */
export function lasting(milliseconds: number): string {
  const minutes = Math.ceil(milliseconds / MINUTE);
  return minutes < HOUR ? `${minutes} min` : `${Math.floor(minutes / HOUR)} h ${two(minutes % HOUR)} min`;
}

/** 'red-1' as 'Red 1'. */
export function roomName(room: string): string {
  const words = room.replaceAll('-', ' ');
  return words.slice(0, 1).toUpperCase() + words.slice(1);
}

/** 'room-1' as '1', for behind the word for a room, in whichever of the guide's languages somebody typed it. */
export const roomAfterWord = (room: string): string =>
  roomName(room.replace(/^(?:room|chambre|habitacion|quarto)-(?=.)/, ''));

export type Item = Bodies['room.entered']['items'][number];

/** 'gown L, lot 8841; gloves M' */
export const itemsText = (items: readonly Item[]): string =>
  items
    .map(({ item, size, lot }) =>
      [size === null ? item : `${item} ${size}`, ...(lot === null ? [] : [`lot ${lot}`])].join(', '),
    )
    .join('; ');

type Worn = NonNullable<Stay['worn']>;

/** `titled`: the title of the procedure, where it is known here. */
export function wornText(
  { worn, ensemble }: Pick<Stay, 'worn' | 'ensemble'>,
  titled: (worn: Worn) => string = ({ procedure }) => procedure,
): string {
  const version = worn === null ? [] : [`${titled(worn)}, version ${worn.version}`];
  return [...version, ...(ensemble === null ? [] : [ensemble])].join('; ');
}

/** When something happened, as a form has it. */
export interface When {
  readonly is: 'now' | 'earlier';
  readonly local: string;
  readonly reason: string;
}

interface Stated {
  readonly happened: string;
  readonly late: string | null;
}

const textOr = (text: string): string | null => (text.trim() === '' ? null : text.trim());

/** The stated time and why it is late; or what is wrong, in words. */
export function statedOf({ is, local, reason }: When, now: number): Stated | string {
  if (is === 'now') return { happened: new Date(now).toISOString(), late: null };
  const at = millisecondsOf(local);
  if (at === undefined) return LOG.mistakes.at;
  if (at > now) return LOG.mistakes.ahead;
  const late = textOr(reason);
  return late === null ? LOG.mistakes.late : { happened: new Date(at).toISOString(), late };
}

export interface ItemTyped {
  readonly item: string;
  readonly size: string;
  readonly lot: string;
}

/** Only what somebody read on a pack. */
export const itemsOf = (typed: readonly ItemTyped[]): Item[] =>
  typed
    .map(({ item, size, lot }) => ({ item: item.trim(), size: textOr(size), lot: textOr(lot) }))
    .filter(({ item, size, lot }) => item !== '' && (size !== null || lot !== null));

export interface LimitTyped {
  readonly minutes: string;
  readonly source: string;
}

/** Null where both are empty; undefined where it is none. */
function limitOf({ minutes, source }: LimitTyped): Bodies['room.entered']['limit'] | undefined {
  if (minutes.trim() === '') return null;
  const number = Number(minutes);
  const where = textOr(source);
  return Number.isSafeInteger(number) && number > 0 && where !== null
    ? { minutes: number, source: where }
    : undefined;
}

/** What the form for a way in has. */
export interface InTyped {
  readonly person: string;
  readonly role: RoomRole | '';
  readonly room: string;
  readonly worn: Bodies['room.entered']['worn'];
  readonly ensemble: string;
  readonly items: readonly ItemTyped[];
  readonly observer: string;
  readonly limit: LimitTyped;
  readonly drill: boolean;
  readonly when: When;
}

/** The entry of a way in; or what is missing, in words. */
export function enteredOf(typed: InTyped, visit: string, now: number): Bodies['room.entered'] | string {
  const room = slugOf(typed.room);
  if (typed.person === '') return LOG.mistakes.who;
  if (typed.role === '') return LOG.mistakes.role;
  if (room === '') return LOG.mistakes.room;
  if (typed.observer === typed.person) return LOG.mistakes.self;
  const limit = limitOf(typed.limit);
  if (limit === undefined) return LOG.mistakes.limit;
  const stated = statedOf(typed.when, now);
  if (typeof stated === 'string') return stated;
  return {
    visit,
    person: typed.person,
    room,
    role: typed.role,
    worn: typed.worn,
    ensemble: textOr(typed.ensemble),
    items: itemsOf(typed.items),
    observer: textOr(typed.observer),
    limit,
    drill: typed.drill,
    ...stated,
  };
}

export interface OutTyped {
  readonly asked: Asked | '';
  readonly exit: string | null;
  readonly when: When;
}

/** The entry of a way out; or what is missing, in words. The wearer is always asked, or it is said that nobody did. */
export function leftOf(
  stay: Stay,
  { asked, exit, when }: OutTyped,
  now: number,
): Bodies['room.left'] | string {
  const { visit, person, room, entered, role } = stay;
  if (asked === '' && (role === 'wearer' || role === null)) return LOG.mistakes.asked;
  const stated = statedOf(when, now);
  if (typeof stated === 'string') return stated;
  // A time to the minute must not lie before one to the second.
  if (entered !== null && Date.parse(stated.happened) < Date.parse(entered) - MINUTE)
    return LOG.mistakes.before;
  return { visit, person, room, exit, asked: asked === '' ? null : asked, ...stated };
}

/** What the form for a correction has: all of the stay, as it should be. */
export interface CorrectTyped extends Omit<InTyped, 'observer' | 'drill' | 'when'> {
  readonly what: 'change' | 'way-out' | 'visit';
  readonly entered: string;
  readonly left: string;
  readonly asked: Asked | '';
  readonly reason: string;
}

type Corrected = Bodies['room.corrected'];

const same = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** Undefined where the field was left as it was; else the instant, or null where it is none. */
function timeChanged(local: string, was: string | null): string | null | undefined {
  if (local === (was === null ? '' : localOf(Date.parse(was)))) return undefined;
  const at = millisecondsOf(local);
  return at === undefined ? null : new Date(at).toISOString();
}

const UNCHANGED = {
  person: null,
  room: null,
  role: null,
  entered: null,
  left: null,
  worn: null,
  ensemble: null,
  items: null,
  limit: null,
  asked: null,
} as const;

/** Null for whatever is as it was. */
const changed = <Value>(now: Value, was: Value): Value | null => (same(now, was) ? null : now);

function changesOf(
  stay: Stay,
  typed: CorrectTyped,
  now: number,
): Omit<Corrected, 'visit' | 'undone' | 'reason'> | string {
  const [entered, left] = [timeChanged(typed.entered, stay.entered), timeChanged(typed.left, stay.left)];
  const limit = limitOf(typed.limit);
  const room = slugOf(typed.room);
  if (room === '') return LOG.mistakes.room;
  if (entered === null || left === null) return LOG.mistakes.at;
  if ([entered, left].some((at) => at !== undefined && Date.parse(at) > now)) return LOG.mistakes.ahead;
  if (limit === undefined) return LOG.mistakes.limit;
  const changes = {
    person: changed(typed.person, stay.person),
    room: changed(room, stay.room),
    role: typed.role === '' ? null : changed(typed.role, stay.role),
    entered: entered ?? null,
    left: left ?? null,
    worn: changed(typed.worn, stay.worn),
    ensemble: changed(textOr(typed.ensemble), stay.ensemble),
    items: changed(itemsOf(typed.items), itemsOf(typedItems(stay.items))),
    limit: changed(limit, stay.limit),
    asked: typed.asked === '' ? null : changed(typed.asked, stay.asked),
  };
  return same(changes, UNCHANGED) ? LOG.mistakes.nothing : changes;
}

/** The entry of a correction, which names only what is put right; or what is missing, in words. */
export function correctedOf(stay: Stay, typed: CorrectTyped, now: number): Corrected | string {
  const reason = textOr(typed.reason);
  const changes = typed.what === 'change' ? changesOf(stay, typed, now) : UNCHANGED;
  if (typeof changes === 'string') return changes;
  if (reason === null) return LOG.mistakes.reason;
  return { visit: stay.visit, undone: typed.what === 'change' ? null : typed.what, ...changes, reason };
}

export const typedItems = (items: readonly Item[]): readonly ItemTyped[] =>
  items.map(({ item, size, lot }) => ({ item, size: size ?? '', lot: lot ?? '' }));

/** What the day's log is asked for; empty where it does not matter. */
export interface Asking {
  readonly day: string;
  readonly room: string;
  readonly person: string;
  readonly role: string;
  /** In equipment, sizes and lots. */
  readonly text: string;
  readonly drills: boolean;
}

/** Whether somebody was in on a local day, for any part of it. */
function onDay({ entered, left }: Stay, day: string, now: number): boolean {
  const from = localOf(Date.parse(entered ?? left ?? '')).slice(0, 10);
  const to = left === null ? localOf(now).slice(0, 10) : localOf(Date.parse(left)).slice(0, 10);
  return (from <= day && day <= to) || from === day;
}

export function asked(stays: readonly Stay[], asking: Asking, now: number): readonly Stay[] {
  const { day, room, person, role, text, drills } = asking;
  const wanted = text.trim().toLowerCase();
  return stays.filter(
    (stay) =>
      (day === '' || onDay(stay, day, now)) &&
      (room === '' || stay.room === room) &&
      (person === '' || stay.person === person) &&
      (role === '' || stay.role === role) &&
      (drills || !stay.drill) &&
      (wanted === '' || `${wornText(stay)} ${itemsText(stay.items)}`.toLowerCase().includes(wanted)),
  );
}

/** Sizes that somebody wore last, by item. */
export function sizesOf(stays: readonly Stay[], person: string): ReadonlyMap<string, string> {
  const sizes = new Map<string, string>();
  for (const stay of stays)
    if (stay.person === person)
      for (const { item, size } of stay.items) if (size !== null) sizes.set(item, size);
  return sizes;
}
