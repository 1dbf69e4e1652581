// What the chances of slips and circumstances stand for, in French.
import type { Tongue } from '../romance/tongue.ts';

export const PRIORS: Tongue['priors'] = {
  'slip.omitted-hygiene': "Une étape d'hygiène est omise bien que la procédure soit lue à voix haute.",
  'slip.inadequate-hygiene':
    "L'hygiène des mains ou des gants est faite, mais l'endroit contaminé se trouve dans la partie manquée.",
  'slip.wipe-missed-area':
    "Une surface est essuyée, mais l'endroit contaminé se trouve dans la partie manquée.",
  'slip.wipe-too-short':
    'Une surface est essuyée, mais ne reste pas humide aussi longtemps que le produit le demande.',
  'slip.wrong-grip': "La main saisit une autre partie que celle que l'étape indique.",
  'slip.snap': 'Un gant, une bride ou une cagoule claque et projette ce qui se trouve dessus.',
  'slip.brush': 'Un élément lâche ou qui se balance frôle une surface voisine.',
  'slip.edge-curls':
    "Le bord roulé d'un vêtement ou d'une cagoule se retourne et son extérieur touche ce qui est dessous.",
  'slip.two-hands-on-zip':
    'La seconde main saisit le devant de la combinaison pendant que la première manœuvre la fermeture.',
  'slip.reach-to-face':
    "Une main gantée ou nue va au visage juste après le retrait d'une protection du visage.",
  'slip.leg-on-leg': "Une jambe, une botte ou une surbotte touche l'autre jambe.",
  'slip.balance': "La personne équipée perd l'équilibre et se retient à quelque chose.",
  'slip.touch-fixture':
    "Une main ou un vêtement touche un élément de la pièce que l'étape ne nomme pas : couvercle, chaise, robinet, mur.",
  'slip.cross-line':
    "Quelqu'un passe du côté sale au côté propre, ou l'inverse, sans que la procédure le dise.",
  'slip.missed-inspection': "Une déchirure ou une souillure est là, et l'inspection ne la trouve pas.",
  'slip.omitted-step': 'Une autre étape est omise bien que la procédure soit lue à voix haute.',
  'slip.wrong-order':
    "Deux parties d'une étape, ou deux étapes, sont faites dans le mauvais ordre malgré la lecture à voix haute.",
  'circumstance.glove-pinhole': "Le gant a un trou que personne ne peut voir en l'enfilant.",
  'circumstance.glove-perforated-in-use': "Le gant s'est percé à l'usage, sans que cela soit remarqué.",
  'circumstance.dirty-lever':
    'Le levier, la poignée ou le robinet à utiliser est contaminé par une main précédente.',
  'circumstance.soiled-strap':
    "Une bride ou un lien à l'arrière de la tête est contaminé au début de la sortie.",
  'circumstance.soiled-back': "Le dos d'un vêtement est contaminé au début de la sortie.",
  'circumstance.full-bin': 'La poubelle est si pleine que ce qui y entre touche la main ou en ressort.',
};
