// What changed around the steps, in French.
import type { AroundTable } from '../aroundWords.ts';

export const AROUND: AroundTable = {
  fields: {
    title: 'Titre',
    about: 'Objet déclaré',
    source: 'Source suivie',
    donning: "Habillage dont c'est l'inverse",
  },
  invented: {
    yes: "La procédure dit désormais qu'elle est inventée.",
    no: "La procédure ne dit plus qu'elle est inventée.",
  },
  agent: {
    a: (agent) => `Elle n'a plus à tenir contre : ${agent}.`,
    b: (agent) => `Elle doit désormais tenir aussi contre : ${agent}.`,
  },
  person: {
    a: (person) => `Ne fait plus partie des personnes : ${person}.`,
    b: (person) => `Nouveau parmi les personnes : ${person}.`,
  },
  worn: {
    a: (person, item) => `Ce que porte ${person} au départ : en moins, ${item}.`,
    b: (person, item) => `Ce que porte ${person} au départ : en plus, ${item}.`,
  },
  underneath: {
    a: (person, item) => `Ce que garde ${person} en dessous : en moins, ${item}.`,
    b: (person, item) => `Ce que garde ${person} en dessous : en plus, ${item}.`,
  },
  layers: (person) => `Ordre dans lequel ${person} porte ses éléments, de l'intérieur vers l'extérieur`,
  starts: (person) => `Où se tient ${person} au départ`,
  hand: (person, side) =>
    `La main dont ${person} se sert d'abord est désormais la ${side === 'left' ? 'gauche' : 'droite'}.`,
  bare: {
    a: (place) => `N'est plus laissé nu à dessein : ${place}.`,
    b: (place) => `Désormais laissé nu à dessein : ${place}.`,
  },
  zone: {
    a: (zone) => `Zone supprimée : ${zone}.`,
    b: (zone) => `Nouvelle zone : ${zone}.`,
  },
  fixture: {
    a: (fixture) => `N'est plus dans la pièce : ${fixture}.`,
    b: (fixture) => `Nouveau dans la pièce : ${fixture}.`,
  },
  fixtureFields: {
    kind: "ce que c'est",
    zone: 'où cela se trouve',
    clean: 'si cela doit rester propre',
    worked: "comment on l'actionne",
    product: 'de quoi cela est imbibé',
  },
  beforeNow: (what, before, now) => `${what} : avant, ${before} ; désormais, ${now}`,
  worked: {
    hand: 'à la main',
    elbow: 'au coude',
    pedal: 'à la pédale',
    sensor: 'sans contact',
    open: 'reste ouvert',
  },
  yesNo: { yes: 'oui', no: 'non' },
  none: 'rien',
  product: {
    a: (product) => `Ne fait plus partie des produits : ${product}.`,
    b: (product) => `Nouveau parmi les produits : ${product}.`,
  },
  states: {
    contaminated: 'contaminé',
    uncontaminated: 'tenu pour non contaminé',
    maybe: 'peut-être contaminé',
  },
  start: (surface) => `Ce qui est déclaré au départ pour ${surface}`,
  spraying: {
    yes: 'La pulvérisation compte désormais comme un nettoyage.',
    no: 'La pulvérisation ne compte plus comme un nettoyage.',
  },
  observer: "Confiance accordée à l'observateur",
  dependence: (much) => `se trompe en même temps que la personne équipée : ${much}`,
  dependences: {
    zero: 'jamais',
    low: 'rarement',
    moderate: 'parfois',
    high: 'souvent',
    complete: 'toujours',
  },
  accepted: {
    a: "N'est plus accepté par écrit",
    b: 'Nouvellement accepté par écrit',
    both: "Accepté par écrit en d'autres termes",
  },
  saidBy: ({ by, date, review, reason }) => `par ${by} le ${date}, à revoir le ${review} : « ${reason} »`,
  departureAt: (what, step) => `${what} – ${step}`,
};
