// What changed around the steps, in English.
import { type AroundTable, aroundWords } from '../aroundWords.ts';
import { evidenceWords } from './evidence.ts';
import { findingWords } from './findings.ts';
import { AGENT_NOUNS, FIXTURE_NOUNS, ITEM_NOUNS, PRODUCT_NOUNS } from './nouns.ts';
import { fixturePhrase, joined, personPhrase, surfacePhrase, zonePhrase } from './phrases.ts';
import { stepReference } from './steps.ts';

const TABLE: AroundTable = {
  fields: {
    title: 'The title',
    about: 'What it says that it is about',
    source: 'The source that it follows',
    donning: 'The donning that it undoes',
  },
  invented: {
    yes: 'It says now that it is invented.',
    no: 'It no longer says that it is invented.',
  },
  agent: {
    a: (agent) => `It need no longer hold against: ${agent}.`,
    b: (agent) => `It must now also hold against: ${agent}.`,
  },
  person: {
    a: (person) => `No longer among the people: ${person}.`,
    b: (person) => `New among the people: ${person}.`,
  },
  worn: {
    a: (person, item) => `What ${person} wears at the start: no longer ${item}.`,
    b: (person, item) => `What ${person} wears at the start: now also ${item}.`,
  },
  underneath: {
    a: (person, item) => `What ${person} keeps on underneath: no longer ${item}.`,
    b: (person, item) => `What ${person} keeps on underneath: now also ${item}.`,
  },
  layers: (person) => `The order in which ${person} wears things, from inside to outside`,
  starts: (person) => `Where ${person} stands at the start`,
  hand: (person, side) => `The hand that ${person} uses first is now the ${side} one.`,
  bare: {
    a: (place) => `No longer left bare on purpose: ${place}.`,
    b: (place) => `Now left bare on purpose: ${place}.`,
  },
  zone: {
    a: (zone) => `No longer a zone of the room: ${zone}.`,
    b: (zone) => `New zone of the room: ${zone}.`,
  },
  fixture: {
    a: (fixture) => `No longer in the room: ${fixture}.`,
    b: (fixture) => `New in the room: ${fixture}.`,
  },
  fixtureFields: {
    kind: 'what it is',
    zone: 'where it stands',
    clean: 'whether it is kept clean',
    worked: 'how it is worked',
    product: 'what it is soaked with',
  },
  beforeNow: (what, before, now) => `${what}: before ${before}, now ${now}`,
  worked: {
    hand: 'by hand',
    elbow: 'by elbow',
    pedal: 'by pedal',
    sensor: 'without touching',
    open: 'it stands open',
  },
  yesNo: { yes: 'yes', no: 'no' },
  none: 'nothing',
  product: {
    a: (product) => `No longer among the products: ${product}.`,
    b: (product) => `New among the products: ${product}.`,
  },
  states: {
    contaminated: 'contaminated',
    uncontaminated: 'taken as not contaminated',
    maybe: 'perhaps contaminated',
  },
  start: (surface) => `What is stated at the start of ${surface}`,
  spraying: {
    yes: 'Spraying now counts as cleaning.',
    no: 'Spraying no longer counts as cleaning.',
  },
  observer: 'How far the observer is relied on',
  dependence: (much) => `errs together with the wearer: ${much}`,
  dependences: {
    zero: 'never',
    low: 'seldom',
    moderate: 'now and then',
    high: 'often',
    complete: 'always',
  },
  accepted: {
    a: 'No longer accepted in writing',
    b: 'Newly accepted in writing',
    both: 'Accepted in writing, in other words',
  },
  saidBy: ({ by, date, review, reason }) =>
    `by ${by} on ${date}, to be looked at again on ${review}: “${reason}”`,
  departureAt: (what, step) => `${what} – ${step}`,
};

export const AROUND = aroundWords({
  table: TABLE,
  ground: {
    person: personPhrase,
    surface: (setting, id) => surfacePhrase(setting, id).text,
    zone: zonePhrase,
    fixture: fixturePhrase,
    stepAt: stepReference,
    item: (item) => ITEM_NOUNS[item].all,
    fixtureKind: (kind) => FIXTURE_NOUNS[kind],
    product: (product) => PRODUCT_NOUNS[product],
    agent: (agent) => AGENT_NOUNS[agent],
    evidence: (id) => evidenceWords(id).says,
    finding: findingWords,
    joined,
    quoted: (text) => `“${text}”`,
  },
});
