// Steps in French: named in the infinitive, read aloud in the imperative with 'vous'.
import type { Closure } from '../../domain/items.ts';
import type { ProductId } from '../../domain/products.ts';
import type { Hands } from '../gloved.ts';
import type { StepTold, Steps } from '../romance/tongue.ts';
import { de, it } from './grammar.ts';

const WITH: Readonly<Record<ProductId, string>> = {
  'alcohol-hand-rub': 'avec la solution hydro-alcoolique',
  'disinfectant-wipe': 'avec des lingettes désinfectantes',
  'chlorine-0.5': 'avec la solution chlorée forte (0,5 %)',
  'chlorine-0.05': 'avec la solution chlorée faible (0,05 %)',
  'soap-and-water': "à l'eau et au savon",
};

const HANDS: Readonly<Record<Hands, string>> = {
  gloved: 'les deux mains gantées',
  bare: 'les deux mains nues',
  mixed: 'les deux mains, gantées ou nues',
};

type Say = (told: StepTold) => string;

const product = ({ product: id }: StepTold): string => (id === undefined ? '' : ` ${WITH[id]}`);

const OPEN: Readonly<Record<Closure, Say>> = {
  none: ({ verb, object }) => `${verb('ouvrir', 'ouvrez')} ${object.text}`,
  ties: ({ verb, object }) => `${verb('dénouer', 'dénouez')} les liens ${de(object)}`,
  'hook-and-loop': ({ verb, object }) => `${verb('ouvrir', 'ouvrez')} les attaches ${de(object)}`,
  zip: ({ verb, object }) => `${verb('ouvrir', 'ouvrez')} la fermeture à glissière ${de(object)}`,
  strap: ({ verb, object }) => `${verb('desserrer', 'desserrez')} la bride ${de(object)}`,
  hose: ({ verb, object }) => `${verb('débrancher', 'débranchez')} le tuyau ${de(object)}`,
  buckle: ({ verb, object }) => `${verb('ouvrir', 'ouvrez')} la ceinture ${de(object)}`,
  strings: ({ verb, object }) => `${verb('dénouer', 'dénouez')} les lacets ${de(object)}`,
};

const CLOSE: Readonly<Record<Closure, Say>> = {
  none: ({ verb, object }) => `${verb('fermer', 'fermez')} ${object.text}`,
  ties: ({ verb, object }) => `${verb('nouer', 'nouez')} les liens ${de(object)}`,
  'hook-and-loop': ({ verb, object }) => `${verb('fermer', 'fermez')} les attaches ${de(object)}`,
  zip: ({ verb, object }) => `${verb('fermer', 'fermez')} la fermeture à glissière ${de(object)}`,
  strap: ({ verb, object }) => `${verb('ajuster', 'ajustez')} la bride ${de(object)}`,
  hose: ({ verb, object }) => `${verb('brancher', 'branchez')} le tuyau ${de(object)}`,
  buckle: ({ verb, object }) => `${verb('fermer', 'fermez')} la ceinture ${de(object)}`,
  strings: ({ verb, object }) => `${verb('nouer', 'nouez')} les lacets ${de(object)}`,
};

const open: Say = (told) => {
  if (told.closure !== undefined) return OPEN[told.closure](told);
  return `${told.tied ? told.verb('dénouer', 'dénouez') : told.verb('ouvrir', 'ouvrez')} ${told.object.text}`;
};

const close: Say = (told) => {
  if (told.closure !== undefined) return CLOSE[told.closure](told);
  return `${told.tied ? told.verb('nouer', 'nouez') : told.verb('fermer', 'fermez')} ${told.object.text}`;
};

const inspect: Say = ({ verb, object, hasItems, looked }) => {
  const look = verb('inspecter', 'inspectez');
  if (hasItems) return `${look} ${object.text}`;
  return looked ? `${look} ${looked.text}` : `${look} tout l'équipement`;
};

/** 'du côté propre', "à l'extérieur de la chambre", 'dans la zone de déshabillage'. */
function into(zone: string): string {
  if (zone.startsWith('le côté ')) return `du ${zone.slice(3)}`;
  return zone.startsWith("l'extérieur") ? `à ${zone}` : `dans ${zone}`;
}

const onto = ({ fixture }: StepTold): string => (fixture ? `, sur ${fixture.text}` : '');

export const STEPS: Steps = {
  verbs: {
    remove: ({ verb, object }) => `${verb('retirer', 'retirez')} ${object.text}`,
    'put-on': ({ verb, object }) => `${verb('mettre', 'mettez')} ${object.text}`,
    unfasten: open,
    fasten: close,
    sanitise: (told) =>
      `${told.product === 'soap-and-water' ? told.verb('laver', 'lavez') : told.verb('désinfecter', 'désinfectez')} ${HANDS[told.hands]}${product(told)}`,
    wipe: (told) => `${told.verb('essuyer', 'essuyez')} ${told.target.text}${product(told)}`,
    inspect,
    say: ({ verb, helper }) =>
      helper
        ? `${verb('appeler', 'appelez')} ${helper.text} et ${verb('attendre', 'attendez')} la réponse`
        : `${verb('annoncer', 'annoncez')} et ${verb('attendre', 'attendez')} la réponse`,
    move: (told) =>
      `${told.verb('passer', 'passez')} ${into(told.zone?.text ?? 'la zone suivante')}${onto(told)}`,
    'step-on': ({ verb, fixture }) => `${verb('monter', 'montez')}${fixture ? ` sur ${fixture.text}` : ''}`,
    sit: ({ verb, fixture }) =>
      `${verb("s'asseoir", 'asseyez-vous')}${fixture ? ` sur ${fixture.text}` : ''}`,
    stand: ({ verb, fixture }) =>
      `${verb('se lever', 'levez-vous')}${fixture ? `, les pieds sur ${fixture.text}` : ''}`,
    touch: ({ verb, target }) => `${verb('toucher', 'touchez')} ${target.text}`,
  },
  how: {
    'peel-cuff':
      "retirez le premier en le pelant par l'extérieur, puis roulez le second avec un doigt glissé sous son poignet",
    'pull-by-outside': "tirez-les l'un après l'autre par l'extérieur",
    'peel-one': "pelez-le avec l'autre main, en le retournant sur l'envers",
    'pull-on': "enfilez-les l'un après l'autre",
    'pull-on-one': 'enfilez-le',
    'inside-out':
      "saisissez seulement l'intérieur, éloignez le vêtement du corps et roulez-le en le retournant sur l'envers",
    'outside-pull': "tirez par l'extérieur du devant et des manches",
    'front-pull': 'tirez par le devant',
    'waist-first': "défaites la taille avant le cou, puis roulez par l'intérieur en retournant sur l'envers",
    'together-with-gloves':
      "tirez le devant vers l'avant jusqu'à ce qu'il cède, roulez sur l'envers et laissez les gants partir avec",
    'upper-tie-first': 'le cou avant la taille',
    'waist-tie-first': 'la taille avant le cou',
    'zip-one-hand':
      "deux doigts d'une main sur la fermeture, l'autre main loin de la combinaison, tête en arrière",
    'zip-two-hands': "une main sur la fermeture, l'autre tenant le devant",
    'roll-inside':
      "les mains à l'intérieur seulement, roulez la combinaison vers le bas, sur son propre extérieur, jusqu'aux pieds",
    'roll-inside-with-gloves':
      "les mains à l'intérieur seulement, laissez les gants partir avec les manches, roulez jusqu'aux pieds",
    'helper-rolls-outside':
      "la personne qui aide, placée derrière, roule vers le bas par l'extérieur ; les mains de la personne équipée ne touchent que l'intérieur",
    'tear-at-neck': "rompez la bride du cou, tenez l'intérieur et roulez en éloignant du corps",
    'over-head': 'soulevez la bride du cou par-dessus la tête',
    dress: 'enfilez sans rien laisser toucher le sol',
    close: 'fermez toutes les attaches',
    'from-behind': "saisissez par l'arrière, soulevez vers l'avant et éloignez",
    'front-grip-cover': "saisissez par l'extérieur et soulevez",
    'detach-hose': 'tenez la cagoule immobile et tirez le tuyau',
    'helper-cuffs-hood':
      "la personne qui aide roule le bord par l'extérieur ; au signal, penchez-vous et faites glisser vers le bas en éloignant du visage",
    'hood-alone': "saisissez par l'extérieur et soulevez sans aide",
    'unclasp-belt': 'ouvrez la boucle ; la personne qui aide tient le boîtier',
    'hand-over-unit': 'boîtier et tuyau ensemble, loin du corps',
    'rear-strap': "par la bride à l'arrière, en vous penchant en avant, sans toucher le devant",
    'front-grip': 'par le devant',
    'lower-then-upper':
      "d'abord la bride du bas, puis celle du haut, en vous penchant en avant, sans toucher le devant",
    'upper-then-lower': "d'abord la bride du haut, puis celle du bas",
    'front-grip-mask': 'par le devant',
    'over-the-head': 'passez par-dessus la tête, puis ajustez',
    connect: 'branchez et vérifiez que cela tient',
    'heel-first': "en position assise, par l'extérieur, le talon avant la pointe, jambes écartées",
    'toe-first': 'en position assise, la pointe avant le talon',
    'standing-on-one-leg': 'debout sur une jambe',
    'untie-strings': 'penchez-vous et tirez sur les lacets pour les dénouer',
    'step-out': "bloquez un talon avec l'autre botte et sortez le pied, sans les mains",
    'pull-off-by-hand': 'retirez-les à la main',
    'one-wipe-per-shoe':
      'en position assise, une lingette neuve pour chacune, de haut en bas avec la semelle, sans toucher les chevilles',
    'same-wipe-for-both': 'en position assise, une seule lingette pour les deux, semelles comprises',
    'without-soles': 'en position assise, le dessus seulement',
    'pull-up': 'remontez-les sans toucher les semelles',
    'tie-strings': 'nouez les lacets',
    'rub-until-dry': "toute la surface, jusqu'à séchage complet",
    'rub-not-dried': 'sans attendre le séchage',
    'spray-hands': 'par pulvérisation',
    'wipe-all-over': "en totalité, en gardant humide pendant le temps indiqué sur l'étiquette",
    'wipe-fixture': "en totalité, en gardant humide pendant le temps indiqué sur l'étiquette",
    'spray-over': 'par pulvérisation',
    'look-over': 'cherchez déchirures et souillures',
    'call-and-response': '',
    walk: '',
    step: '',
    'sit-down': '',
    'stand-up': '',
    use: '',
  },
  helped: (helper) => `, avec l'aide ${de(helper)}`,
  discarded: (object, fixture) => `; déposez-${it(object)} dans ${fixture.text}`,
};
