// Slips and circumstances as Spanish clauses.
import type { SlipClauses } from '../romance/tongue.ts';
import { agree, de, does, is } from './grammar.ts';

export const SLIPS: SlipClauses = {
  'omitted-hygiene': () => 'se omite la higiene de manos',
  'inadequate-hygiene': () => 'la higiene de manos no alcanza el punto contaminado',
  'omitted-wipe': () => 'se omite la limpieza',
  'wipe-missed-area': () => 'la limpieza no alcanza el punto contaminado',
  'wipe-too-short': () => 'el desinfectante no actúa el tiempo suficiente',
  'wrong-grip': ({ glove, on }) =>
    glove ? `un dedo toca el exterior ${de(on)}` : `una mano agarra la parte equivocada ${de(on)}`,
  'touch-beneath': ({ on }) => `un dedo toca lo que hay debajo ${de(on)}`,
  snap: ({ on }) => `${on.text} ${does('restall', on)} y ${does('lanz', on)} lo que hay encima`,
  brush: ({ on }) => `${on.text} ${does('roz', on)} lo que está cerca`,
  swing: ({ on }) => `${on.text} ${does('golpe', on)} el cuerpo al balancearse`,
  bump: ({ who, helper }) => `${who.text} y ${helper.text} chocan`,
  'edge-curls': () => 'un borde abierto se vuelve sobre las manos o la ropa',
  'second-hand-on-front': ({ on }) => `una segunda mano agarra la parte delantera ${de(on)}`,
  'strap-slips': ({ on }) => `la cinta resbala y la parte delantera ${de(on)} cae contra el cuerpo`,
  'reach-to-face': () => 'una mano va a la cara',
  'leg-on-leg': () => 'una pierna se apoya en la otra o la roza',
  'loses-balance': ({ who }) => `${who.text} pierde el equilibrio`,
  'ankle-touch': () => 'una mano toca un tobillo',
  'touch-fixture': () => 'algo toca un elemento de la sala que el paso no nombra',
  'cross-line': ({ helper }) => `${helper.text} cruza la línea hacia el lado limpio`,
  'missed-tear': () => 'no se advierte un agujero en un guante',
  pinhole: ({ on }) => `${on.text} ${on.many ? 'tienen' : 'tiene'} una microperforación`,
  'worn-through': ({ on }) => `${on.text} se ${on.many ? 'han' : 'ha'} perforado con el uso`,
  'unclean-hands': ({ who }) => `las manos ${de(who)} ya están contaminadas`,
  'soiled-strap': ({ on }) => `${on.text} ${is(on)} ${agree('manchad', on)}`,
  'soiled-back': ({ on }) => `${on.text} ${is(on)} ${agree('manchad', on)}`,
  'full-bin': () => 'el cubo está demasiado lleno y toca la mano o lo que se tira',
  'dirty-lever': ({ on }) => `una mano anterior contaminó ${on.text}`,
  'stated-maybe': ({ on }) =>
    `el procedimiento da por posible que ${on.text} ${on.many ? 'estén' : 'esté'} ${agree('contaminad', on)}`,
};
