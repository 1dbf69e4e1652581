// What the chances of slips and circumstances stand for, in Portuguese.
import type { Tongue } from '../romance/tongue.ts';

export const PRIORS: Tongue['priors'] = {
  'slip.omitted-hygiene': 'Uma etapa de higiene é omitida embora o procedimento seja lido em voz alta.',
  'slip.inadequate-hygiene':
    'A higiene das mãos ou das luvas é feita, mas o ponto contaminado está na parte não alcançada.',
  'slip.wipe-missed-area':
    'O lenço passa por uma superfície, mas o ponto contaminado está na parte não alcançada.',
  'slip.wipe-too-short':
    'O lenço passa por uma superfície, mas ela não fica úmida pelo tempo que o produto pede.',
  'slip.wrong-grip': 'A mão segura uma parte diferente da que a etapa indica.',
  'slip.snap': 'Uma luva, um tirante ou um capuz estala e lança o que está por cima.',
  'slip.brush': 'Um elemento solto ou que balança roça em uma superfície vizinha.',
  'slip.edge-curls':
    'A borda enrolada de uma veste ou capuz se vira e sua face externa toca no que está embaixo.',
  'slip.two-hands-on-zip':
    'A segunda mão segura a parte da frente do macacão enquanto a primeira move o zíper.',
  'slip.reach-to-face': 'Uma mão com ou sem luva vai ao rosto logo depois da retirada de algo do rosto.',
  'slip.leg-on-leg': 'Uma perna, uma bota ou um cobre-botas encosta na outra perna.',
  'slip.balance': 'A pessoa paramentada perde o equilíbrio e se apoia em algo.',
  'slip.touch-fixture':
    'Uma mão ou veste toca em um elemento da sala que a etapa não nomeia: tampa, cadeira, torneira, parede.',
  'slip.cross-line':
    'Alguém passa do lado sujo para o lado limpo, ou o contrário, sem que o procedimento diga isso.',
  'slip.missed-inspection': 'Há um rasgo ou sujeira, e a inspeção não encontra.',
  'slip.omitted-step': 'Outra etapa é omitida embora o procedimento seja lido em voz alta.',
  'slip.wrong-order':
    'Duas partes de uma etapa, ou duas etapas, são feitas na ordem errada apesar da leitura em voz alta.',
  'circumstance.glove-pinhole': 'A luva tem um furo que ninguém consegue ver ao colocá-la.',
  'circumstance.glove-perforated-in-use': 'A luva furou com o uso, sem que isso fosse percebido.',
  'circumstance.dirty-lever':
    'A alavanca, o puxador ou a torneira a usar está contaminado por uma mão anterior.',
  'circumstance.soiled-strap': 'Um tirante ou uma tira atrás da cabeça está contaminado no começo da saída.',
  'circumstance.soiled-back': 'A parte das costas de uma veste está contaminada no começo da saída.',
  'circumstance.full-bin': 'A lixeira está tão cheia que o que entra toca na mão ou volta a sair.',
};
