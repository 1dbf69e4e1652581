// What changed around the steps, in Portuguese as written in Brazil.
import type { AroundTable } from '../aroundWords.ts';

export const AROUND: AroundTable = {
  fields: {
    title: 'Título',
    about: 'Objetivo declarado',
    source: 'Fonte seguida',
    donning: 'Paramentação que este procedimento desfaz',
  },
  invented: {
    yes: 'O procedimento agora diz que é inventado.',
    no: 'O procedimento não diz mais que é inventado.',
  },
  agent: {
    a: (agent) => `Não precisa mais resistir ao seguinte: ${agent}.`,
    b: (agent) => `Agora deve resistir também ao seguinte: ${agent}.`,
  },
  person: {
    a: (person) => `Não está mais entre as pessoas: ${person}.`,
    b: (person) => `Novo entre as pessoas: ${person}.`,
  },
  worn: {
    a: (person, item) => `O que ${person} usa no início: não mais ${item}.`,
    b: (person, item) => `O que ${person} usa no início: agora também ${item}.`,
  },
  underneath: {
    a: (person, item) => `O que ${person} mantém por baixo: não mais ${item}.`,
    b: (person, item) => `O que ${person} mantém por baixo: agora também ${item}.`,
  },
  layers: (person) => `Ordem em que ${person} usa as peças, de dentro para fora`,
  starts: (person) => `Onde ${person} está no início`,
  hand: (person, side) =>
    `A mão que ${person} usa primeiro é agora a ${side === 'left' ? 'esquerda' : 'direita'}.`,
  bare: {
    a: (place) => `Não fica mais descoberto de propósito: ${place}.`,
    b: (place) => `Agora fica descoberto de propósito: ${place}.`,
  },
  zone: {
    a: (zone) => `Zona retirada: ${zone}.`,
    b: (zone) => `Zona nova: ${zone}.`,
  },
  fixture: {
    a: (fixture) => `Não está mais na sala: ${fixture}.`,
    b: (fixture) => `Novo na sala: ${fixture}.`,
  },
  fixtureFields: {
    kind: 'o que é',
    zone: 'onde está',
    clean: 'se deve ser mantido limpo',
    worked: 'como se aciona',
    product: 'com que está embebido',
  },
  beforeNow: (what, before, now) => `${what}: antes, ${before}; agora, ${now}`,
  worked: {
    hand: 'com a mão',
    elbow: 'com o cotovelo',
    pedal: 'com pedal',
    sensor: 'sem contato',
    open: 'fica aberto',
  },
  yesNo: { yes: 'sim', no: 'não' },
  none: 'nada',
  product: {
    a: (product) => `Não está mais entre os produtos: ${product}.`,
    b: (product) => `Novo entre os produtos: ${product}.`,
  },
  states: {
    contaminated: 'contaminado',
    uncontaminated: 'considerado não contaminado',
    maybe: 'talvez contaminado',
  },
  start: (surface) => `O que se declara no início sobre ${surface}`,
  spraying: {
    yes: 'A pulverização agora conta como limpeza.',
    no: 'A pulverização não conta mais como limpeza.',
  },
  observer: 'Confiança depositada no observador',
  dependence: (much) => `erra junto com a pessoa paramentada: ${much}`,
  dependences: {
    zero: 'nunca',
    low: 'raramente',
    moderate: 'às vezes',
    high: 'com frequência',
    complete: 'sempre',
  },
  accepted: {
    a: 'Não é mais aceito por escrito',
    b: 'Agora aceito por escrito',
    both: 'Aceito por escrito em outros termos',
  },
  saidBy: ({ by, date, review, reason }) => `por ${by} em ${date}, a ser revisto em ${review}: “${reason}”`,
  departureAt: (what, step) => `${what} – ${step}`,
};
