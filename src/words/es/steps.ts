// Steps in Spanish: named in the infinitive, read aloud in the imperative with 'usted'.
import type { Closure } from '../../domain/items.ts';
import type { ProductId } from '../../domain/products.ts';
import type { Hands } from '../gloved.ts';
import type { StepTold, Steps } from '../romance/tongue.ts';
import { de, it, to } from './grammar.ts';

const WITH: Readonly<Record<ProductId, string>> = {
  'alcohol-hand-rub': 'con solución hidroalcohólica',
  'disinfectant-wipe': 'con toallitas desinfectantes',
  'chlorine-0.5': 'con solución clorada fuerte (0,5 %)',
  'chlorine-0.05': 'con solución clorada débil (0,05 %)',
  'soap-and-water': 'con agua y jabón',
};

const HANDS: Readonly<Record<Hands, string>> = {
  gloved: 'las dos manos enguantadas',
  bare: 'las dos manos desnudas',
  mixed: 'las dos manos, enguantadas o desnudas',
};

type Say = (told: StepTold) => string;

const product = ({ product: id }: StepTold): string => (id === undefined ? '' : ` ${WITH[id]}`);

const OPEN: Readonly<Record<Closure, Say>> = {
  none: ({ verb, object }) => `${verb('abrir', 'abra')} ${object.text}`,
  ties: ({ verb, object }) => `${verb('desatar', 'desate')} las cintas ${de(object)}`,
  'hook-and-loop': ({ verb, object }) => `${verb('abrir', 'abra')} los cierres ${de(object)}`,
  zip: ({ verb, object }) => `${verb('abrir', 'abra')} la cremallera ${de(object)}`,
  strap: ({ verb, object }) => `${verb('aflojar', 'afloje')} la cinta de sujeción ${de(object)}`,
  hose: ({ verb, object }) => `${verb('desconectar', 'desconecte')} el tubo ${de(object)}`,
  buckle: ({ verb, object }) => `${verb('abrir', 'abra')} el cinturón ${de(object)}`,
  strings: ({ verb, object }) => `${verb('desatar', 'desate')} los cordones ${de(object)}`,
};

const CLOSE: Readonly<Record<Closure, Say>> = {
  none: ({ verb, object }) => `${verb('cerrar', 'cierre')} ${object.text}`,
  ties: ({ verb, object }) => `${verb('atar', 'ate')} las cintas ${de(object)}`,
  'hook-and-loop': ({ verb, object }) => `${verb('cerrar', 'cierre')} los cierres ${de(object)}`,
  zip: ({ verb, object }) => `${verb('cerrar', 'cierre')} la cremallera ${de(object)}`,
  strap: ({ verb, object }) => `${verb('ajustar', 'ajuste')} la cinta de sujeción ${de(object)}`,
  hose: ({ verb, object }) => `${verb('conectar', 'conecte')} el tubo ${de(object)}`,
  buckle: ({ verb, object }) => `${verb('abrochar', 'abroche')} el cinturón ${de(object)}`,
  strings: ({ verb, object }) => `${verb('atar', 'ate')} los cordones ${de(object)}`,
};

const open: Say = (told) => {
  if (told.closure !== undefined) return OPEN[told.closure](told);
  return `${told.tied ? told.verb('desatar', 'desate') : told.verb('abrir', 'abra')} ${told.object.text}`;
};

const close: Say = (told) => {
  if (told.closure !== undefined) return CLOSE[told.closure](told);
  return `${told.tied ? told.verb('atar', 'ate') : told.verb('cerrar', 'cierre')} ${told.object.text}`;
};

const inspect: Say = ({ verb, object, hasItems, looked }) => {
  const look = verb('revisar', 'revise');
  if (hasItems) return `${look} ${object.text}`;
  return looked ? `${look} ${to(looked.text)}` : `${look} todo el equipo`;
};

const onto = ({ fixture }: StepTold): string => (fixture ? `, sobre ${fixture.text}` : '');

export const STEPS: Steps = {
  verbs: {
    remove: ({ verb, object }) => `${verb('retirar', 'retire')} ${object.text}`,
    'put-on': ({ verb, object, toAnother }) =>
      `${toAnother ? verb('poner', 'ponga') : verb('ponerse', 'póngase')} ${object.text}`,
    unfasten: open,
    fasten: close,
    sanitise: (told) =>
      `${told.product === 'soap-and-water' ? told.verb('lavar', 'lave') : told.verb('desinfectar', 'desinfecte')} ${HANDS[told.hands]}${product(told)}`,
    wipe: (told) => `${told.verb('limpiar', 'limpie')} ${told.target.text}${product(told)}`,
    inspect,
    say: ({ verb, helper }) =>
      helper
        ? `${verb('llamar', 'llame')} ${to(helper.text)} y ${verb('esperar', 'espere')} la respuesta`
        : `${verb('avisar', 'avise')} y ${verb('esperar', 'espere')} la respuesta`,
    move: (told) =>
      `${told.verb('pasar', 'pase')} ${to(told.zone?.text ?? 'la zona siguiente')}${onto(told)}`,
    'step-on': ({ verb, fixture }) => `${verb('pisar', 'pise')}${fixture ? ` ${fixture.text}` : ''}`,
    sit: ({ verb, fixture }) => `${verb('sentarse', 'siéntese')}${fixture ? ` en ${fixture.text}` : ''}`,
    stand: ({ verb, fixture }) =>
      `${verb('levantarse', 'levántese')}${fixture ? `, con los pies sobre ${fixture.text}` : ''}`,
    touch: ({ verb, target }) => `${verb('tocar', 'toque')} ${target.text}`,
  },
  how: {
    'peel-cuff':
      'retire el primero por fuera, volviéndolo del revés, y enrolle el segundo con un dedo por debajo de su puño',
    'pull-by-outside': 'tire de uno y después del otro por fuera',
    'peel-one': 'retírelo con la otra mano, volviéndolo del revés',
    'pull-on': 'uno después del otro, bien ajustados',
    'pull-on-one': 'bien ajustado',
    'inside-out': 'agarre solo el interior, aparte la prenda del cuerpo y enróllela del revés',
    'outside-pull': 'tire por fuera de la parte delantera y de las mangas',
    'front-pull': 'tire de la parte delantera',
    'waist-first': 'suelte la cintura antes que el cuello y enrolle del revés por dentro',
    'together-with-gloves':
      'tire de la parte delantera hasta que ceda, enrolle del revés y deje que los guantes salgan a la vez',
    'upper-tie-first': 'el cuello antes que la cintura',
    'waist-tie-first': 'la cintura antes que el cuello',
    'zip-one-hand':
      'dos dedos de una mano en la cremallera, la otra mano lejos del mono, la cabeza hacia atrás',
    'zip-two-hands': 'una mano en la cremallera, la otra sujetando la parte delantera',
    'roll-inside':
      'con las manos solo por dentro, enróllelo hacia abajo sobre su propio exterior hasta los pies',
    'roll-inside-with-gloves':
      'con las manos solo por dentro, deje que los guantes salgan con las mangas y enróllelo hasta los pies',
    'helper-rolls-outside':
      'quien ayuda, desde atrás, lo enrolla hacia abajo por fuera; las manos de la persona equipada tocan solo el interior',
    'tear-at-neck': 'rompa la tira del cuello, sujete el interior y enrolle apartando del cuerpo',
    'over-head': 'levante la tira del cuello por encima de la cabeza',
    dress: 'vístase sin que nada toque el suelo',
    close: 'cierre todas las sujeciones',
    'from-behind': 'agarre por la parte posterior, levante hacia delante y aparte',
    'front-grip-cover': 'agarre por fuera y levante',
    'detach-hose': 'mantenga quieta la capucha y tire del tubo',
    'helper-cuffs-hood':
      'quien ayuda enrolla el borde por fuera; a la señal, inclínese y deslice hacia abajo, apartando de la cara',
    'hood-alone': 'agarre por fuera y levante sin ayuda',
    'unclasp-belt': 'abra la hebilla; quien ayuda sostiene la carcasa',
    'hand-over-unit': 'carcasa y tubo juntos, lejos del cuerpo',
    'rear-strap':
      'por la cinta de atrás, con el cuerpo inclinado hacia delante, sin tocar la parte delantera',
    'front-grip': 'por la parte delantera',
    'lower-then-upper':
      'primero la cinta inferior y después la superior, con el cuerpo inclinado hacia delante, sin tocar la parte delantera',
    'upper-then-lower': 'primero la cinta superior y después la inferior',
    'front-grip-mask': 'por la parte delantera',
    'over-the-head': 'por la cabeza, y después ajuste',
    connect: 'conecte y compruebe la sujeción',
    'heel-first': 'en posición sentada, por fuera, el talón antes que la punta, con las piernas separadas',
    'toe-first': 'en posición sentada, la punta antes que el talón',
    'standing-on-one-leg': 'de pie sobre una pierna',
    'untie-strings': 'inclínese y tire de los cordones para soltarlos',
    'step-out': 'sujete un talón con la otra bota y saque el pie, sin usar las manos',
    'pull-off-by-hand': 'con la mano',
    'one-wipe-per-shoe':
      'en posición sentada, una toallita nueva para cada uno, de arriba abajo y la suela, sin tocar los tobillos',
    'same-wipe-for-both': 'en posición sentada, una sola toallita para ambos, también las suelas',
    'without-soles': 'en posición sentada, solo el empeine',
    'pull-up': 'suba cada pieza sin tocar las suelas',
    'tie-strings': 'ate los cordones',
    'rub-until-dry': 'por toda la superficie, hasta que se seque',
    'rub-not-dried': 'sin esperar a que se seque',
    'spray-hands': 'rociando',
    'wipe-all-over': 'por toda la superficie, que debe seguir húmeda durante el tiempo de la etiqueta',
    'wipe-fixture': 'por toda la superficie, que debe seguir húmeda durante el tiempo de la etiqueta',
    'spray-over': 'rociando',
    'look-over': 'busque roturas y suciedad',
    'call-and-response': '',
    walk: '',
    step: '',
    'sit-down': '',
    'stand-up': '',
    use: '',
  },
  helped: (helper) => `, con la ayuda ${de(helper)}`,
  discarded: (object, fixture) => `; deposíte${it(object)} en ${fixture.text}`,
};
