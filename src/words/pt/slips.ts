// Slips and circumstances as Portuguese clauses.
import type { SlipClauses } from '../romance/tongue.ts';
import { agree, de, does, is, within } from './grammar.ts';

export const SLIPS: SlipClauses = {
  'omitted-hygiene': () => 'a higiene das mãos é omitida',
  'inadequate-hygiene': () => 'a higiene das mãos não alcança o ponto contaminado',
  'omitted-wipe': () => 'a limpeza é omitida',
  'wipe-missed-area': () => 'a limpeza não alcança o ponto contaminado',
  'wipe-too-short': () => 'o desinfetante não age por tempo suficiente',
  'wrong-grip': ({ glove, on }) =>
    glove ? `um dedo toca na face externa ${de(on)}` : `uma mão segura a parte errada ${de(on)}`,
  'touch-beneath': ({ on }) => `um dedo toca no que está embaixo ${de(on)}`,
  snap: ({ on }) => `${on.text} ${does('estal', on)} e ${does('lanç', on)} o que está por cima`,
  brush: ({ on }) => `${on.text} ${does('roç', on)} no que está perto`,
  swing: ({ on }) => `${on.text} ${does('balanç', on)} contra o corpo`,
  bump: ({ who, helper }) => `${who.text} e ${helper.text} esbarram`,
  'edge-curls': () => 'uma borda aberta se vira sobre as mãos ou as roupas',
  'second-hand-on-front': ({ on }) => `uma segunda mão segura a parte da frente ${de(on)}`,
  'strap-slips': ({ on }) => `o tirante escorrega e a parte da frente ${de(on)} cai contra o corpo`,
  'reach-to-face': () => 'uma mão vai ao rosto',
  'leg-on-leg': () => 'uma perna se apoia na outra ou roça nela',
  'loses-balance': ({ who }) => `${who.text} perde o equilíbrio`,
  'ankle-touch': () => 'uma mão toca em um tornozelo',
  'touch-fixture': () => 'algo toca em um elemento da sala que a etapa não nomeia',
  'cross-line': ({ helper }) => `${helper.text} cruza a linha para o lado limpo`,
  'missed-tear': () => 'um furo em uma luva não é percebido',
  pinhole: ({ on }) => `há um microfuro ${within(on.text)}`,
  'worn-through': ({ on }) => `${on.text} ${is(on)} ${agree('furad', on)} pelo uso`,
  'unclean-hands': ({ who }) => `as mãos ${de(who)} já estão contaminadas`,
  'soiled-strap': ({ on }) => `${on.text} ${is(on)} ${agree('suj', on)}`,
  'soiled-back': ({ on }) => `${on.text} ${is(on)} ${agree('suj', on)}`,
  'full-bin': () => 'a lixeira está cheia demais e toca na mão ou no que é descartado',
  'dirty-lever': ({ on }) => `uma mão anterior contaminou ${on.text}`,
  'stated-maybe': ({ on }) =>
    `o procedimento dá como possível que ${on.text} ${on.many ? 'estejam' : 'esteja'} ${agree('contaminad', on)}`,
};
