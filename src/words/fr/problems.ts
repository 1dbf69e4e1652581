// What a procedure cannot do, in French: what is wrong, without a capital and a full stop, and how to mend it.
import type { WrongAndMend } from '../words.ts';
import type { Problems } from '../romance/tongue.ts';
import { agree, de, is } from './grammar.ts';

const say = (wrong: string, mend: string): WrongAndMend => ({ wrong, mend });

export const PROBLEMS: Problems = {
  codes: {
    'not-worn': ({ item, who }) =>
      say(
        `${item.text} ${item.many ? 'ne sont pas' : "n'est pas"} ${agree('porté', item)} par ${who.text} à cette étape`,
        "Corrigez ce qui est porté au départ, ou supprimez ou déplacez l'étape.",
      ),
    'held-by': ({ item, by }) =>
      say(
        `${item.text} ${is(item)} ${agree('retenu', item)} par ${by.text}, encore en place par-dessus`,
        `Retirez ${by.text} avant cette étape.`,
      ),
    'already-worn': ({ item, who }) =>
      say(
        `${item.text} ${is(item)} déjà ${agree('porté', item)} par ${who.text}`,
        "Supprimez l'étape, ou faites d'abord retirer ce qui est déjà en place.",
      ),
    'no-glove-beneath': ({ hand }) =>
      say(
        `un gant extérieur est mis sur ${hand.text}, qui ne porte pas de gant`,
        "Mettez d'abord un gant intérieur, ou indiquez de simples gants.",
      ),
    'still-fastened': ({ item }) =>
      say(
        `${item.text} ${is(item)} encore ${agree('fermé', item)}`,
        `Ouvrez les attaches ${de(item)} avant cette étape.`,
      ),
    'already-open': ({ item }) =>
      say(`${item.text} ${is(item)} déjà ${agree('ouvert', item)}`, "Supprimez l'étape."),
    'helper-missing': () =>
      say(
        "cela ne peut se faire sans aide, et aucune personne n'est désignée pour aider",
        "Désignez une personne pour aider, ou choisissez une façon qui n'en demande pas.",
      ),
    'helper-elsewhere': ({ who }) =>
      say(
        `${who.text} doit aider mais se trouve dans une autre zone`,
        'Faites venir cette personne avant cette étape, ou désignez-en une autre.',
      ),
    'owner-elsewhere': ({ who }) =>
      say(
        `${who.text}, à qui appartient cet équipement, se trouve dans une autre zone`,
        'Amenez les deux personnes dans la même zone avant cette étape.',
      ),
    'fixture-missing': ({ fixture }) =>
      say(
        `il manque ici ce qui est nécessaire : ${fixture.text}`,
        `Ajoutez ${fixture.text} à la zone, ou choisissez une autre façon.`,
      ),
    'fixture-elsewhere': ({ fixture }) =>
      say(
        `${fixture.text} se trouve dans une autre zone`,
        'Allez-y avant cette étape, ou utilisez ce qui se trouve dans cette zone.',
      ),
    'not-a-seat': ({ fixture }) => say(`${fixture.text} n'est pas un siège`, 'Indiquez une chaise.'),
    'not-seated': () =>
      say("cela se fait assis, et personne ne s'est assis", 'Asseyez-vous avant cette étape.'),
    'not-standing': () =>
      say('cela se fait debout, et la personne équipée est assise', 'Levez-vous avant cette étape.'),
    'dirty-seat': ({ fixture }) =>
      say(
        `cela se fait sur un siège réservé aux étapes propres, et ${fixture.text} n'en est pas un`,
        'Passez sur la chaise propre avant cette étape.',
      ),
    'product-unsuited': ({ product, surface }) =>
      say(
        `produit inadapté (${product}) : il ne convient pas pour ${surface.text} et n'y désinfecte donc rien`,
        'Choisissez un produit prévu pour cela.',
      ),
    'technique-unclear': ({ action }) =>
      say(
        `plusieurs techniques sont possibles${action === undefined ? '' : ` (${action})`}, et aucune n'est indiquée`,
        'Indiquez la technique.',
      ),
    'nothing-to-clean': () =>
      say(
        "il n'y a rien ici que cette étape puisse désinfecter",
        "Indiquez ce qui doit l'être, ou supprimez l'étape.",
      ),
  },
  layering: {
    'never-put-on': (item) =>
      say(
        `le déshabillage retire ${item.text}, que l'habillage ne met jamais`,
        'Faites nommer le même équipement aux deux.',
      ),
    'never-taken-off': (item) =>
      say(
        `l'habillage met ${item.text}, que le déshabillage ne connaît pas`,
        'Faites nommer le même équipement aux deux.',
      ),
    'other-way-round': (item, by) =>
      say(
        `l'habillage met ${by.text} par-dessus ${item.text}, le déshabillage suppose l'inverse`,
        'Faites dire aux deux ce qui recouvre quoi.',
      ),
    other: () =>
      say(
        "le déshabillage contredit l'ordre dans lequel l'habillage a superposé l'équipement",
        'Faites dire aux deux ce qui recouvre quoi.',
      ),
  },
  notWorkedOut: say(
    "les faux pas n'ont pas été examinés, car ils sont trop nombreux ou trop imbriqués pour un calcul exact",
    "Divisez la procédure ; ce qui est listé ci-dessous reste valable, mais ce n'est pas toute la réponse.",
  ),
};
