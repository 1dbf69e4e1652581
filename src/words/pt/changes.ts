// What edits change, and two procedures side by side, in Portuguese.
import type { Phrase } from '../romance/grammar.ts';
import { capital } from '../capital.ts';
import type { Comparing, Mends } from '../romance/tongue.ts';
import { de, to } from './grammar.ts';

const phrase = (text: string, many: boolean): Phrase => ({ text, gender: 'f', many });

export const MENDS: Mends = {
  insert: (where, steps) => `Inserir ${where}: ${steps}.`,
  beginning: 'no começo',
  after: (step) => `depois ${de(step)}`,
  move: (step, where) => `Mover ${step.text} ${where}.`,
  leaveOut: (step) => `Omitir ${step.text}.`,
  replace: (number, sentence) => `Trocar a etapa ${number} por: ${sentence}`,
  groups: {
    mucosa: phrase('as mucosas', true),
    skin: phrase('a pele', false),
    'clothes-shoes': { ...phrase('as roupas ou os sapatos', true), each: ['as roupas', 'os sapatos'] },
    'clean-side': phrase('o lado limpo', false),
  },
  impossible: 'Etapas que não podem ser feitas',
  departures: 'Desvios da prática publicada',
  time: 'Duração',
  openTo: (group) => `Vias abertas até ${group.text}`,
  chanceOf: ({ text, each }) => `Probabilidade de chegar ${each ? each.map(to).join(' ou ') : to(text)}`,
  barriers: 'Barreiras',
  gone: 'Achados que desaparecem',
  fresh: 'Achados novos',
  noLongerOpen: 'Não está mais aberto, mas continua',
  newSlips: (count, places) => `Novas falhas ou circunstâncias que bastam sozinhas: ${count} (até ${places})`,
  more: (count) => `e mais ${count}`,
};

const WHICH = { a: 'Só o primeiro procedimento', b: 'Só o segundo procedimento' } as const;

export const COMPARING: Comparing = {
  fields: {
    who: 'quem faz',
    action: 'ação',
    items: 'elementos',
    side: 'lado',
    part: 'parte',
    of: 'de quem',
    place: 'parte do corpo',
    technique: 'técnica',
    product: 'produto',
    fixture: 'elemento da sala',
    zone: 'área',
    helper: 'ajuda',
    note: 'nota',
  },
  mats: 'tapetes',
  soakedMats: (product) => `tapetes embebidos (${product})`,
  wettedCloths: (product) => `panos embebidos (${product})`,
  units: { wipe: ['lenço', 'lenços'], use: ['uso', 'usos'], mat: ['tapete', 'tapetes'] },
  pair: ['par', 'pares'],
  single: ['peça avulsa', 'peças avulsas'],
  added: (step, told) => `Novo: etapa ${step}. ${told}`,
  leftOut: (step, told) => `Omitido: etapa ${step}. ${told}`,
  moved: (from, now) => `Movido: a etapa ${from} agora é a etapa ${now}.`,
  movedAndChanged: (fields, from, now) =>
    `Movido e alterado (${fields}): a etapa ${from} agora é a etapa ${now}.`,
  changed: (fields, from, now) => `Alterado (${fields}): etapa ${from}, agora etapa ${now}.`,
  unchanged: (from, now) =>
    from === now ? `Sem mudança: etapa ${now}.` : `Sem mudança: etapa ${from}, agora etapa ${now}.`,
  beforeAndNow: (before, now) => `Antes: ${before} Agora: ${now}`,
  kinds: (a, b) =>
    `${capital(a)} de um lado, ${b} do outro: leia os números lado a lado, sem ver neles uma melhor e outra pior.`,
  onlyOne: (which, name, isPerson) =>
    `${WHICH[which]} tem ${name.text}: o que chega ${isPerson ? 'a essa pessoa' : 'a esse elemento'} não pode ser comparado e não conta nos números por classe.`,
  noDifference: 'nenhuma diferença',
  range: (low, high) => `intervalo de 90%: de ${low} a ${high}`,
  points: 'pontos percentuais',
  cannotTell: 'não é possível distinguir',
  chance: ['menor', 'maior'],
  time: ['mais curto', 'mais longo'],
};
