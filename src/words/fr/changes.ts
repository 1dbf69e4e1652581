// What edits change, and two procedures side by side, in French.
import type { Phrase } from '../romance/grammar.ts';
import { capital } from '../capital.ts';
import type { Comparing, Mends } from '../romance/tongue.ts';

const phrase = (text: string, many: boolean): Phrase => ({ text, gender: 'f', many });

export const MENDS: Mends = {
  insert: (where, steps) => `Insérer ${where} : ${steps}.`,
  beginning: 'au début',
  after: (step) => `après ${step.text}`,
  move: (step, where) => `Déplacer ${step.text} ${where}.`,
  leaveOut: (step) => `Supprimer ${step.text}.`,
  replace: (number, sentence) => `Remplacer l'étape ${number} par : ${sentence}`,
  groups: {
    mucosa: phrase('les muqueuses', true),
    skin: phrase('la peau', false),
    'clothes-shoes': phrase('les vêtements ou les chaussures', true),
    'clean-side': phrase('le côté propre', false),
  },
  impossible: 'Étapes irréalisables',
  departures: 'Écarts aux pratiques publiées',
  time: 'Durée',
  openTo: (group) => `Voies ouvertes vers ${group.text}`,
  chanceOf: (group) => `Probabilité d'atteindre ${group.text}`,
  barriers: 'Barrières',
  gone: 'Constats qui disparaissent',
  fresh: 'Nouveaux constats',
  noLongerOpen: "N'est plus ouvert, mais reste",
  newSlips: (count, places) =>
    `Nouveaux faux pas ou circonstances qui suffisent seuls : ${count} (vers ${places})`,
  more: (count) => `et ${count} de plus`,
};

const WHICH = { a: 'La première procédure', b: 'La seconde procédure' } as const;

export const COMPARING: Comparing = {
  fields: {
    who: 'qui le fait',
    action: 'action',
    items: 'éléments',
    side: 'côté',
    part: 'partie',
    of: 'à qui',
    place: 'endroit du corps',
    technique: 'technique',
    product: 'produit',
    fixture: 'élément de la pièce',
    zone: 'zone',
    helper: 'aide',
    note: 'remarque',
  },
  mats: 'tapis',
  soakedMats: (product) => `tapis imbibés (${product})`,
  wettedCloths: (product) => `chiffons imbibés (${product})`,
  units: { wipe: ['lingette', 'lingettes'], use: ['utilisation', 'utilisations'], mat: ['tapis', 'tapis'] },
  pair: ['paire', 'paires'],
  single: ['pièce seule', 'pièces seules'],
  added: (step, told) => `Nouveau : étape ${step}. ${told}`,
  leftOut: (step, told) => `Supprimé : étape ${step}. ${told}`,
  moved: (from, to) => `Déplacé : l'étape ${from} devient l'étape ${to}.`,
  movedAndChanged: (fields, from, to) =>
    `Déplacé et modifié (${fields}) : l'étape ${from} devient l'étape ${to}.`,
  changed: (fields, from, to) => `Modifié (${fields}) : étape ${from}, désormais étape ${to}.`,
  unchanged: (from, to) =>
    from === to ? `Inchangé : étape ${to}.` : `Inchangé : étape ${from}, désormais étape ${to}.`,
  beforeAndNow: (before, now) => `Avant : ${before} Désormais : ${now}`,
  kinds: (a, b) =>
    `${capital(a)} d'un côté, ${b} de l'autre : lisez leurs chiffres côte à côte, sans y voir un meilleur et un moins bon.`,
  onlyOne: (which, name, isPerson) =>
    `${WHICH[which]} est seule à avoir ${name.text} : ce qui atteint ${isPerson ? 'cette personne' : 'cet élément'} ne peut être comparé et ne compte pas dans les chiffres par classe.`,
  noDifference: 'aucune différence',
  range: (low, high) => `intervalle à 90 % de ${low} à ${high}`,
  points: 'points de pourcentage',
  cannotTell: 'impossible à départager',
  chance: ['plus faible', 'plus élevée'],
  time: ['plus court', 'plus long'],
};
