// What the chances of slips and circumstances stand for, in Spanish.
import type { Tongue } from '../romance/tongue.ts';

export const PRIORS: Tongue['priors'] = {
  'slip.omitted-hygiene': 'Se omite un paso de higiene aunque el procedimiento se lee en voz alta.',
  'slip.inadequate-hygiene':
    'Se hace la higiene de manos o guantes, pero el punto contaminado queda en la parte no alcanzada.',
  'slip.wipe-missed-area':
    'Se limpia una superficie, pero el punto contaminado queda en la parte no alcanzada.',
  'slip.wipe-too-short': 'Se limpia una superficie, pero no sigue húmeda tanto tiempo como pide el producto.',
  'slip.wrong-grip': 'La mano agarra una parte distinta de la que indica el paso.',
  'slip.snap': 'Un guante, una cinta o una capucha restalla y lanza lo que tiene encima.',
  'slip.brush': 'Un elemento suelto o que se balancea roza una superficie vecina.',
  'slip.edge-curls':
    'El borde enrollado de una prenda o capucha se vuelve y su exterior toca lo que hay debajo.',
  'slip.two-hands-on-zip':
    'La segunda mano agarra la parte delantera del mono mientras la primera mueve la cremallera.',
  'slip.reach-to-face':
    'Una mano con guante o desnuda va a la cara justo después de retirar algo de la cara.',
  'slip.leg-on-leg': 'Una pierna, una bota o un cubrebotas toca la otra pierna.',
  'slip.balance': 'La persona equipada pierde el equilibrio y se apoya en algo.',
  'slip.touch-fixture':
    'Una mano o una prenda toca un elemento de la sala que el paso no nombra: tapa, silla, grifo, pared.',
  'slip.cross-line':
    'Alguien pasa del lado sucio al lado limpio, o al revés, sin que el procedimiento lo diga.',
  'slip.missed-inspection': 'Hay una rotura o suciedad, y la revisión no la encuentra.',
  'slip.omitted-step': 'Se omite otro paso aunque el procedimiento se lee en voz alta.',
  'slip.wrong-order':
    'Dos partes de un paso, o dos pasos, se hacen en el orden equivocado aunque se leen en voz alta.',
  'circumstance.glove-pinhole': 'El guante tiene un agujero que nadie puede ver al ponérselo.',
  'circumstance.glove-perforated-in-use': 'El guante se perforó con el uso, sin que se advirtiera.',
  'circumstance.dirty-lever':
    'La palanca, la manija o el grifo que se va a usar está contaminado por una mano anterior.',
  'circumstance.soiled-strap':
    'Una cinta en la parte posterior de la cabeza está contaminada al empezar la salida.',
  'circumstance.soiled-back': 'La espalda de una prenda está contaminada al empezar la salida.',
  'circumstance.full-bin': 'El cubo está tan lleno que lo que entra toca la mano o vuelve a salir.',
};
