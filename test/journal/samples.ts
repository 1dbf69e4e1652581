// Entries for tests: a body of every kind, and devices that write them one after the other. Everybody and everything is
// invented.
import type { PlainObject } from '../../src/journal/canonical.ts';
import { type Entry, type Head, headOf, nextEntry, START } from '../../src/journal/entry.ts';
import { hashOfText } from '../../src/journal/hash.ts';
import { type Bodies, type KindName, KINDS } from '../../src/journal/kinds/index.ts';
import { versionOf } from '../../src/journal/kinds/kind.ts';

export const UNIT = 'larkmoor-isolation';
const FILE = 'doffline: 1\ntitle: Gloves only (invented)\n';
export const CONTENT = hashOfText(FILE);
const VERSION = { procedure: 'suit-doffing', version: '1', content: CONTENT } as const;
const LINE = { exit: 'exit-1', line: 4, step: 's4' } as const;

export const BODIES: Bodies = {
  'unit.created': { title: 'Larkmoor General Hospital (invented), isolation unit', invented: true },
  'device.paired': { device: 'tablet-1', label: 'Tablet in the anteroom' },
  'device.revoked': { device: 'tablet-1', reason: 'Left in the red room.' },
  'procedure.drafted': { ...VERSION, text: FILE },
  'procedure.sent-for-review': { ...VERSION, to: ['p-3k7m', 'p-9x2q'] },
  'procedure.sent-back': { ...VERSION, reason: 'The last look is missing.' },
  'procedure.approved': { ...VERSION, people: ['p-3k7m'], on: '2026-11-25', reviewOn: '2027-11-25' },
  'procedure.retired': { ...VERSION, reason: 'The supplier sends another hood.' },
  'departure.accepted': {
    ...VERSION,
    finding: 'practice.shield-by-strap',
    step: 's7',
    surface: null,
    reason: 'The shield has no rear strap.',
    person: 'p-3k7m',
    reviewOn: '2027-05-01',
  },
  'product.time-recorded': {
    product: 'disinfectant-wipe',
    contactSeconds: 180,
    rubSeconds: null,
    drySeconds: null,
    label: 'Canister of November (invented)',
  },
  'staff.listed': { person: 'p-3k7m', role: 'infection-prevention lead', initials: 'IL' },
  'language.signed-off': { language: 'fr', wording: CONTENT, on: '2026-11-20' },
  'exit.started': {
    exit: 'exit-1',
    drill: true,
    ...VERSION,
    agent: 'enveloped',
    room: 'red-1',
    wearer: 'p-3k7m',
    observer: 'p-9x2q',
    assistants: [],
    kind: 'doffing',
  },
  'exit.line-shown': LINE,
  'exit.line-confirmed': { ...LINE, means: 'pedal' },
  'exit.not-seen': LINE,
  'exit.slip-recorded': {
    ...LINE,
    slip: 'brush',
    surfaces: ['wearer.hand.left'],
    text: 'Apron against scrubs.',
  },
  'exit.continuation-offered': {
    exit: 'exit-1',
    offer: 'offer-1',
    step: 's4',
    choices: ['wipe', 'change'],
    continuation: {
      id: 'wipe',
      steps: [{ id: 's4a', action: 'wipe' }],
      barriers: { before: 1, after: null },
    },
  },
  'exit.continuation-answered': { exit: 'exit-1', offer: 'offer-1', choice: 'wipe', text: null },
  'exit.stopped': { ...LINE, text: 'Wearer feels faint.' },
  'exit.resumed': LINE,
  'exit.timer-started': { exit: 'exit-1', timer: 'rub-1', step: 's4', seconds: 20 },
  'exit.timer-ended': { exit: 'exit-1', timer: 'rub-1', how: 'elapsed', seconds: 20 },
  'exit.handed-over': { ...LINE, role: 'observer', from: 'p-9x2q', to: 'p-5t8w' },
  'exit.ended': { exit: 'exit-1', how: 'finished', deviations: 1, linesNotSeen: 0 },
  'exit.question-answered': { exit: 'exit-1', question: 'torn-glove', answer: 'no', salt: '5a'.repeat(16) },
  'room.entered': {
    visit: 'visit-1',
    person: 'p-3k7m',
    room: 'red-1',
    happened: '2026-11-25T08:00:00.000Z',
    role: 'wearer',
    worn: VERSION,
    ensemble: null,
    items: [{ item: 'gown', size: 'L', lot: 'LOT-8841' }],
    observer: 'p-9x2q',
    limit: { minutes: 120, source: 'The unit’s rule (invented)' },
    drill: false,
    late: null,
  },
  'room.left': {
    visit: 'visit-1',
    person: 'p-3k7m',
    room: 'red-1',
    happened: '2026-11-25T09:10:00.000Z',
    exit: 'exit-1',
    asked: 'asked',
    late: null,
  },
  'room.observer-changed': {
    visit: 'visit-1',
    observer: 'p-5t8w',
    happened: '2026-11-25T08:40:00.000Z',
    late: 'Written down after the exit.',
  },
  'room.corrected': {
    visit: 'visit-1',
    undone: null,
    person: null,
    room: null,
    role: null,
    entered: '2026-11-25T07:55:00.000Z',
    left: null,
    worn: null,
    ensemble: null,
    items: null,
    limit: null,
    asked: null,
    reason: 'The clock on the wall was wrong.',
  },
  'emergency.opened': {
    emergency: 'collapse',
    room: 'red-1',
    exit: 'exit-1',
    happened: '2026-11-25T09:05:00.000Z',
  },
  'note.added': { about: 'exit', id: 'exit-1', text: 'Chair was too low; ask Ms Invented.' },
  'health.read': { account: 'a-1', people: ['p-3k7m'], records: [1], why: 'follow-up' },
  'health.let-in': { account: 'a-2', person: 'p-3k7m', how: 'occupational-health', byAccount: 'a-1' },
  'health.sealed': {
    cipher: 'aes-256-gcm',
    key: 'follow-up-2026',
    nonce: 'MDEyMzQ1Njc4OWFi',
    sealed: 'c2VhbGVkLXNlYWxlZC1zZWFsZWQtc2VhbGVkLXNlYWxlZA',
  },
};

export const KIND_NAMES = Object.keys(BODIES) as readonly KindName[];

export interface Device {
  /** The next entry of a kind, with the sample body where none is given. */
  readonly write: <Name extends KindName>(kind: Name, body?: Bodies[Name]) => Entry;
  /** The next entry of anything at all. */
  readonly writeAny: (kind: string, body: PlainObject, version?: number) => Entry;
  readonly head: () => Head;
}

export function device(name: string, unit = UNIT, from: Head = START): Device {
  let head = from;
  let minute = 0;
  const writeAny = (kind: string, body: PlainObject, version = 1): Entry => {
    minute += 1;
    const at = new Date(Date.UTC(2026, 10, 25, 8, minute)).toISOString();
    const entry = nextEntry(head, { unit, device: name, kind, version, at, by: 'p-9x2q', body });
    head = headOf(entry);
    return entry;
  };
  return {
    writeAny,
    write: (kind, body = BODIES[kind]) => writeAny(kind, body, versionOf(KINDS[kind])),
    head: () => head,
  };
}

/** An entry of every kind, by two devices in turn. */
export function oneOfEach(): readonly Entry[] {
  const devices = [device('desk'), device('tablet-1')];
  return KIND_NAMES.map((kind, index) => devices[index % 2]!.write(kind));
}

const A_DAY = [
  'unit.created',
  'device.paired',
  'procedure.drafted',
  'procedure.sent-for-review',
  'procedure.approved',
  'room.entered',
  'exit.started',
  'exit.line-shown',
  'exit.line-confirmed',
  'exit.slip-recorded',
  'exit.ended',
  'room.left',
  'note.added',
  'health.sealed',
] as const satisfies readonly KindName[];

/** 28 entries by two devices in turn, the same for ever: tests count on places in it. */
export function twentyEight(): readonly Entry[] {
  const devices = [device('desk'), device('tablet-1')];
  return [...A_DAY, ...A_DAY].map((kind, index) => devices[index % 2]!.write(kind));
}

/** So many small entries by one device. */
export function notes(count: number, by: Device = device('desk')): readonly Entry[] {
  return Array.from({ length: count }, (_, index) =>
    by.write('note.added', { about: 'unit', id: 'larkmoor', text: `note ${index}` }),
  );
}
