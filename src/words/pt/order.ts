// The order search and substitution in Portuguese.
import { lower } from '../romance/grammar.ts';
import type { OrderTable } from '../orderWords.ts';
import { PORTUGUESE } from './grammar.ts';

const { of, quoted } = PORTUGUESE;

const which = (kept: boolean): string => (kept ? 'a dada' : 'esta');

export const ORDERING: OrderTable = {
  figure: (is, name) => {
    if (is === 'seconds' || is === 'chance') return `a ${lower(name)}`;
    return `o número de ${lower(name)}`;
  },
  points: (size) => `${size} ponto percentual`,
  slight: (within, rises) => `menos de ${within} a ${rises ? 'mais' : 'menos'}`,
  difference: (name, [from, to, within], rests, rises) => {
    if (within === undefined) return `${name} passa de ${from} para ${to}${rests}`;
    return `${name} ${rises ? 'aumenta' : 'diminui'} menos de ${within} e, arredondada, é de ${from} nos dois casos${rests}`;
  },
  chosen: {
    order: (step, next) => `${step} antes ${of(next)}`,
    technique: (step) => `${step} como indicado aqui`,
    helper: (step, helped) => `${step}${helped}`,
    hygiene: (step) => `${step} neste momento`,
    numbered: (step, number) => `${step} (etapa ${number})`,
  },
  other: {
    order: 'na ordem inversa',
    technique: (way) => `com ${quoted(way)}`,
    helper: 'sem ajuda',
    hygiene: 'sem isso',
  },
  reason: {
    worse: (other, difference) => `, pois ${other} ${difference}.`,
    impossible: (other, wrong) => `, pois ${other} não pode ser feito: ${wrong}.`,
    departs: (other, rule) => `, pois ${other} haveria desvio de uma prática publicada: ${quoted(rule)}.`,
    same: (other) => `; ${other} nenhum número muda.`,
    better: (other, difference) =>
      `; ${other} ${difference}, mas a busca não pode escolher isso ou não o seguiu até o fim.`,
  },
  tried: (tried, scenes) =>
    `${tried} ${tried === 1 ? 'começo de ordem testado' : 'começos de ordem testados'} em ${scenes} ${scenes === 1 ? 'situação' : 'situações'}`,
  proved: (kept, tried) =>
    `Provado: nenhuma ordem que a busca pode escolher é melhor do que ${which(kept)} (${tried}).`,
  notProved: (kept, name, [from, to, within], rests, tried) =>
    `Não provado: ordens que não foram seguidas até o fim ainda poderiam ser melhores do que ${which(kept)}. ` +
    `A diferença: ${name} é de ${to}, e nenhuma ordem que a busca pode escolher ${within === undefined ? `fica abaixo de ${from}` : `a reduz em ${within} ou mais`}${rests} (${tried}).`,
  rewritings: {
    'same-steps': 'As mesmas etapas bastam.',
    'few-steps': 'Algumas etapas mudam de lugar ou são acrescentadas.',
    'new-order': 'É preciso uma nova ordem.',
  },
  kept: 'Nada é pior do que antes, exceto talvez a duração.',
  lost: 'Algo é pior do que antes.',
  changes: {
    new: (now) => `Nova: ${now}`,
    gone: (was) => `Omitida: ${was}`,
    moved: (now) => `Em outro lugar: ${now}`,
    changed: (now, was) => `Alterada: ${now}${was && ` Antes: ${was}`}`,
  },
  learns: (person, count, role) =>
    `${person} ${role === 'observer' ? 'lê e observa' : 'aprende'} ${count} ${count === 1 ? 'etapa alterada' : 'etapas alteradas'}.`,
  refusals: {
    donning: 'Só uma desparamentação tem uma ordem a buscar; esta é uma paramentação.',
    'nothing-worn': 'Neste procedimento ninguém usa nada que se retire.',
    unknown:
      'Indique dois elementos, ou dois produtos, pelos seus nomes no arquivo (docs/procedure-file.md).',
    'not-alike': 'Um elemento só pode substituir um elemento, um produto só um produto.',
    'not-used': 'Este procedimento não o utiliza.',
    'used-already': 'Os dois já estão sendo usados.',
  },
};
