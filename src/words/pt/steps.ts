// Steps in Portuguese: named in the infinitive, read aloud in the imperative with 'você'.
import type { Closure } from '../../domain/items.ts';
import type { ProductId } from '../../domain/products.ts';
import type { Hands } from '../gloved.ts';
import type { StepTold, Steps } from '../romance/tongue.ts';
import { de, it, within } from './grammar.ts';

const WITH: Readonly<Record<ProductId, string>> = {
  'alcohol-hand-rub': 'com preparação alcoólica',
  'disinfectant-wipe': 'com lenços desinfetantes',
  'chlorine-0.5': 'com solução clorada forte (0,5%)',
  'chlorine-0.05': 'com solução clorada fraca (0,05%)',
  'soap-and-water': 'com água e sabonete',
};

const HANDS: Readonly<Record<Hands, string>> = {
  gloved: 'as duas mãos enluvadas',
  bare: 'as duas mãos sem luvas',
  mixed: 'as duas mãos, com ou sem luvas',
};

type Say = (told: StepTold) => string;

const product = ({ product: id }: StepTold): string => (id === undefined ? '' : ` ${WITH[id]}`);

const OPEN: Readonly<Record<Closure, Say>> = {
  none: ({ verb, object }) => `${verb('abrir', 'abra')} ${object.text}`,
  ties: ({ verb, object }) => `${verb('desamarrar', 'desamarre')} as tiras ${de(object)}`,
  'hook-and-loop': ({ verb, object }) => `${verb('abrir', 'abra')} os fechos ${de(object)}`,
  zip: ({ verb, object }) => `${verb('abrir', 'abra')} o zíper ${de(object)}`,
  strap: ({ verb, object }) => `${verb('afrouxar', 'afrouxe')} o tirante ${de(object)}`,
  hose: ({ verb, object }) => `${verb('desconectar', 'desconecte')} o tubo ${de(object)}`,
  buckle: ({ verb, object }) => `${verb('abrir', 'abra')} o cinto ${de(object)}`,
  strings: ({ verb, object }) => `${verb('desamarrar', 'desamarre')} os cordões ${de(object)}`,
};

const CLOSE: Readonly<Record<Closure, Say>> = {
  none: ({ verb, object }) => `${verb('fechar', 'feche')} ${object.text}`,
  ties: ({ verb, object }) => `${verb('amarrar', 'amarre')} as tiras ${de(object)}`,
  'hook-and-loop': ({ verb, object }) => `${verb('fechar', 'feche')} os fechos ${de(object)}`,
  zip: ({ verb, object }) => `${verb('fechar', 'feche')} o zíper ${de(object)}`,
  strap: ({ verb, object }) => `${verb('ajustar', 'ajuste')} o tirante ${de(object)}`,
  hose: ({ verb, object }) => `${verb('conectar', 'conecte')} o tubo ${de(object)}`,
  buckle: ({ verb, object }) => `${verb('fechar', 'feche')} o cinto ${de(object)}`,
  strings: ({ verb, object }) => `${verb('amarrar', 'amarre')} os cordões ${de(object)}`,
};

const open: Say = (told) => {
  if (told.closure !== undefined) return OPEN[told.closure](told);
  return `${told.tied ? told.verb('desamarrar', 'desamarre') : told.verb('abrir', 'abra')} ${told.object.text}`;
};

const close: Say = (told) => {
  if (told.closure !== undefined) return CLOSE[told.closure](told);
  return `${told.tied ? told.verb('amarrar', 'amarre') : told.verb('fechar', 'feche')} ${told.object.text}`;
};

const inspect: Say = ({ verb, object, hasItems, looked }) => {
  const look = verb('inspecionar', 'inspecione');
  if (hasItems) return `${look} ${object.text}`;
  return looked ? `${look} ${looked.text}` : `${look} todo o equipamento`;
};

const onto = ({ fixture }: StepTold): string => (fixture ? `, pisando ${within(fixture.text)}` : '');

/** One wears clothes, puts gloves and shoes on, and sets things on the face; 'colocar' serves for all. */
export const STEPS: Steps = {
  verbs: {
    remove: ({ verb, object }) => `${verb('retirar', 'retire')} ${object.text}`,
    'put-on': ({ verb, object }) => `${verb('colocar', 'coloque')} ${object.text}`,
    unfasten: open,
    fasten: close,
    sanitise: (told) =>
      `${told.product === 'soap-and-water' ? told.verb('lavar', 'lave') : told.verb('higienizar', 'higienize')} ${HANDS[told.hands]}${product(told)}`,
    wipe: (told) => `${told.verb('limpar', 'limpe')} ${told.target.text}${product(told)}`,
    inspect,
    say: ({ verb, helper }) =>
      helper
        ? `${verb('chamar', 'chame')} ${helper.text} e ${verb('aguardar', 'aguarde')} a resposta`
        : `${verb('avisar', 'avise')} e ${verb('aguardar', 'aguarde')} a resposta`,
    move: (told) => `${told.verb('ir', 'vá')} para ${told.zone?.text ?? 'a próxima área'}${onto(told)}`,
    'step-on': ({ verb, fixture }) => `${verb('pisar', 'pise')}${fixture ? ` ${within(fixture.text)}` : ''}`,
    sit: ({ verb, fixture }) =>
      `${verb('sentar-se', 'sente-se')}${fixture ? ` ${within(fixture.text)}` : ''}`,
    stand: ({ verb, fixture }) =>
      `${verb('levantar-se', 'levante-se')}${fixture ? `, com os pés ${within(fixture.text)}` : ''}`,
    touch: ({ verb, target }) => `${verb('tocar', 'toque')} ${within(target.text)}`,
  },
  how: {
    'peel-cuff':
      'retire a primeira por fora, virando-a do avesso, e enrole a segunda com um dedo por baixo do punho',
    'pull-by-outside': 'puxe uma e depois a outra por fora',
    'peel-one': 'retire-a com a outra mão, virando-a do avesso',
    'pull-on': 'uma depois da outra, bem ajustadas',
    'pull-on-one': 'bem ajustada',
    'inside-out': 'segure só a parte interna, afaste a veste do corpo e enrole-a do avesso',
    'outside-pull': 'puxe por fora da parte da frente e das mangas',
    'front-pull': 'puxe pela parte da frente',
    'waist-first': 'solte a cintura antes do pescoço e enrole do avesso pela parte interna',
    'together-with-gloves':
      'puxe a parte da frente até que ceda, enrole do avesso e deixe as luvas saírem junto',
    'upper-tie-first': 'o pescoço antes da cintura',
    'waist-tie-first': 'a cintura antes do pescoço',
    'zip-one-hand': 'dois dedos de uma mão no zíper, a outra mão longe do macacão, a cabeça para trás',
    'zip-two-hands': 'uma mão no zíper, a outra segurando a parte da frente',
    'roll-inside':
      'com as mãos só na parte interna, enrole-o para baixo sobre a própria face externa até os pés',
    'roll-inside-with-gloves':
      'com as mãos só na parte interna, deixe as luvas saírem com as mangas e enrole-o até os pés',
    'helper-rolls-outside':
      'quem ajuda, por trás, enrola-o para baixo pela face externa; as mãos da pessoa paramentada tocam só na parte interna',
    'tear-at-neck': 'rompa a alça do pescoço, segure a parte interna e enrole afastando do corpo',
    'over-head': 'levante a alça do pescoço por cima da cabeça',
    dress: 'vista sem deixar nada encostar no piso',
    close: 'feche todos os fechos',
    'from-behind': 'segure pela parte posterior, levante para a frente e afaste',
    'front-grip-cover': 'segure por fora e levante',
    'detach-hose': 'mantenha o capuz parado e puxe o tubo',
    'helper-cuffs-hood':
      'quem ajuda enrola a borda por fora; ao sinal, incline-se e deslize para baixo, afastando do rosto',
    'hood-alone': 'segure por fora e levante sem ajuda',
    'unclasp-belt': 'abra a fivela; quem ajuda segura a caixa',
    'hand-over-unit': 'caixa e tubo juntos, longe do corpo',
    'rear-strap': 'pelo tirante de trás, com o corpo inclinado para a frente, sem tocar na parte da frente',
    'front-grip': 'pela parte da frente',
    'lower-then-upper':
      'primeiro o tirante inferior e depois o superior, com o corpo inclinado para a frente, sem tocar na parte da frente',
    'upper-then-lower': 'primeiro o tirante superior e depois o inferior',
    'front-grip-mask': 'pela parte da frente',
    'over-the-head': 'por cima da cabeça, e depois ajuste',
    connect: 'conecte e verifique se está firme',
    'heel-first': 'em posição sentada, por fora, o calcanhar antes da ponta, com as pernas afastadas',
    'toe-first': 'em posição sentada, a ponta antes do calcanhar',
    'standing-on-one-leg': 'em pé sobre uma perna',
    'untie-strings': 'incline-se e puxe os cordões para soltá-los',
    'step-out': 'prenda um calcanhar com a outra bota e tire o pé, sem usar as mãos',
    'pull-off-by-hand': 'com a mão',
    'one-wipe-per-shoe':
      'em posição sentada, um lenço novo para cada um, de cima para baixo e a sola, sem tocar nos tornozelos',
    'same-wipe-for-both': 'em posição sentada, um só lenço para os dois, também nas solas',
    'without-soles': 'em posição sentada, só o cabedal',
    'pull-up': 'puxe para cima sem tocar nas solas',
    'tie-strings': 'amarre os cordões',
    'rub-until-dry': 'em toda a superfície, até secar',
    'rub-not-dried': 'sem esperar secar',
    'spray-hands': 'borrifando',
    'wipe-all-over': 'em toda a superfície, que deve ficar úmida pelo tempo do rótulo',
    'wipe-fixture': 'em toda a superfície, que deve ficar úmida pelo tempo do rótulo',
    'spray-over': 'borrifando',
    'look-over': 'procure rasgos e sujeira',
    'call-and-response': '',
    walk: '',
    step: '',
    'sit-down': '',
    'stand-up': '',
    use: '',
  },
  helped: (helper) => `, com a ajuda ${de(helper)}`,
  discarded: (object, fixture) => `; descarte-${it(object)} ${within(fixture.text)}`,
};
