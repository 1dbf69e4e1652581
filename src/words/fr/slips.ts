// Slips and circumstances as French clauses.
import type { SlipClauses } from '../romance/tongue.ts';
import { agree, de, does, is } from './grammar.ts';

export const SLIPS: SlipClauses = {
  'omitted-hygiene': () => "l'hygiène des mains est omise",
  'inadequate-hygiene': () => "l'hygiène des mains manque l'endroit contaminé",
  'omitted-wipe': () => "l'essuyage est omis",
  'wipe-missed-area': () => "l'essuyage manque l'endroit contaminé",
  'wipe-too-short': () => "le désinfectant n'agit pas assez longtemps",
  'wrong-grip': ({ glove, on }) =>
    glove ? `un doigt touche l'extérieur ${de(on)}` : `une main saisit la mauvaise partie ${de(on)}`,
  'touch-beneath': ({ on }) => `un doigt touche ce qui se trouve sous ${on.text}`,
  snap: ({ on }) => `${on.text} ${does('claqu', on)} et ${does('projett', on)} ce qui s'y trouve`,
  brush: ({ on }) => `${on.text} ${does('frôl', on)} ce qui est proche`,
  swing: ({ on }) => `${on.text} se ${does('balanc', on)} contre le corps`,
  bump: ({ who, helper }) => `${who.text} et ${helper.text} se heurtent`,
  'edge-curls': () => 'un bord ouvert se retourne sur les mains ou les vêtements',
  'second-hand-on-front': ({ on }) => `une seconde main saisit le devant ${de(on)}`,
  'strap-slips': ({ on }) => `la bride glisse et le devant ${de(on)} tombe contre le corps`,
  'reach-to-face': () => 'une main va au visage',
  'leg-on-leg': () => "une jambe s'appuie sur l'autre ou la frôle",
  'loses-balance': ({ who }) => `${who.text} perd l'équilibre`,
  'ankle-touch': () => 'une main touche une cheville',
  'touch-fixture': () => "quelque chose touche un élément de la pièce que l'étape ne nomme pas",
  'cross-line': ({ helper }) => `${helper.text} franchit la ligne vers le côté propre`,
  'missed-tear': () => "un trou dans un gant n'est pas remarqué",
  pinhole: ({ on }) => `${on.text} ${on.many ? 'ont' : 'a'} une micro-perforation`,
  'worn-through': ({ on }) => `${on.text} ${on.many ? 'se sont' : "s'est"} ${agree('percé', on)} à l'usage`,
  'unclean-hands': ({ who }) => `les mains ${de(who)} sont déjà contaminées`,
  'soiled-strap': ({ on }) => `${on.text} ${is(on)} ${agree('souillé', on)}`,
  'soiled-back': ({ on }) => `${on.text} ${is(on)} ${agree('souillé', on)}`,
  'full-bin': () => 'la poubelle est trop pleine et touche la main ou ce qui y est jeté',
  'dirty-lever': ({ on }) => `une main précédente a contaminé ${on.text}`,
  'stated-maybe': ({ on }) =>
    `la procédure tient pour possible que ${on.text} ${on.many ? 'soient' : 'soit'} ${agree('contaminé', on)}`,
};
