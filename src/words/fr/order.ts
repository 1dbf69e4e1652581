// The order search and substitution in French.
import { lower } from '../romance/grammar.ts';
import type { OrderTable } from '../orderWords.ts';
import { FRENCH } from './grammar.ts';

const { of, quoted } = FRENCH;

const which = (kept: boolean): string => (kept ? "l'ordre donné" : 'celui-ci');

export const ORDERING: OrderTable = {
  figure: (is, name) => {
    if (is === 'seconds' || is === 'chance') return `la ${lower(name)}`;
    return `le nombre ${of(lower(name))}`;
  },
  points: (size) => `${size} point de pourcentage`,
  slight: (within, rises) => `moins de ${within} de ${rises ? 'plus' : 'moins'}`,
  difference: (name, [from, to, within], rests, rises) => {
    if (within === undefined) return `${name} passe de ${from} à ${to}${rests}`;
    return `${name} ${rises ? 'augmente' : 'diminue'} de moins de ${within} et, arrondie, est de ${from} dans les deux cas${rests}`;
  },
  chosen: {
    order: (step, next) => `${step} avant ${of(next)}`,
    technique: (step) => `${step} comme indiqué ici`,
    helper: (step, helped) => `${step}${helped}`,
    hygiene: (step) => `${step} à ce moment-là`,
    numbered: (step, number) => `${step} (étape ${number})`,
  },
  other: {
    order: "dans l'ordre inverse",
    technique: (way) => `avec ${quoted(way)}`,
    helper: 'sans aide',
    hygiene: 'sans ce geste',
  },
  reason: {
    worse: (other, difference) => `, car ${other}, ${difference}.`,
    impossible: (other, wrong) => `, car ${other}, c'est irréalisable : ${wrong}.`,
    departs: (other, rule) => `, car ${other}, cela s'écarterait d'une pratique publiée : ${quoted(rule)}.`,
    same: (other) => ` ; ${other}, aucun chiffre ne change.`,
    better: (other, difference) =>
      ` ; ${other}, ${difference}, mais la recherche n'a pas le droit de choisir cela ou ne l'a pas suivi jusqu'au bout.`,
  },
  tried: (tried, scenes) =>
    `${tried} ${tried > 1 ? "débuts d'ordre essayés" : "début d'ordre essayé"} dans ${scenes} ${scenes > 1 ? 'situations' : 'situation'}`,
  proved: (kept, tried) =>
    `Prouvé : aucun ordre que la recherche a le droit de choisir n'est meilleur que ${which(kept)} (${tried}).`,
  notProved: (kept, name, [from, to, within], rests, tried) =>
    `Non prouvé : des ordres qui n'ont pas été suivis jusqu'au bout pourraient encore être meilleurs que ${which(kept)}. ` +
    `L'écart : ${name} est de ${to}, et aucun ordre que la recherche a le droit de choisir ${within === undefined ? `n'est en dessous de ${from}` : `ne la réduit de ${within} ou plus`}${rests} (${tried}).`,
  rewritings: {
    'same-steps': 'Les mêmes étapes suffisent.',
    'few-steps': 'Quelques étapes changent de place ou sont ajoutées.',
    'new-order': 'Il faut un nouvel ordre.',
  },
  kept: "Rien n'est pire qu'avant, sauf peut-être la durée.",
  lost: "Quelque chose est pire qu'avant.",
  changes: {
    new: (now) => `Nouveau : ${now}`,
    gone: (was) => `Supprimé : ${was}`,
    moved: (now) => `À une autre place : ${now}`,
    changed: (now, was) => `Modifié : ${now}${was && ` Avant : ${was}`}`,
  },
  learns: (person, count, role) =>
    `${person} ${role === 'observer' ? 'lit et surveille' : 'apprend'} ${count} ${count > 1 ? 'étapes modifiées' : 'étape modifiée'}.`,
  refusals: {
    donning: 'Seul un déshabillage a un ordre à chercher ; ceci est un habillage.',
    'nothing-worn': 'Dans cette procédure, personne ne porte quoi que ce soit qui se retire.',
    unknown:
      'Nommez deux éléments, ou deux produits, par leurs noms dans le fichier (docs/procedure-file.md).',
    'not-alike': "Un élément ne peut remplacer qu'un élément, un produit qu'un produit.",
    'not-used': "Cette procédure ne l'utilise pas.",
    'used-already': 'Les deux sont déjà portés.',
  },
};
