// What changed around the steps, in Spanish.
import type { AroundTable } from '../aroundWords.ts';

export const AROUND: AroundTable = {
  fields: {
    title: 'Título',
    about: 'Objeto declarado',
    source: 'Fuente que sigue',
    donning: 'Colocación que deshace',
  },
  invented: {
    yes: 'El procedimiento dice ahora que es inventado.',
    no: 'El procedimiento ya no dice que es inventado.',
  },
  agent: {
    a: (agent) => `Ya no tiene que resistir frente a lo siguiente: ${agent}.`,
    b: (agent) => `Ahora debe resistir también frente a lo siguiente: ${agent}.`,
  },
  person: {
    a: (person) => `Ya no figura entre las personas: ${person}.`,
    b: (person) => `Nuevo entre las personas: ${person}.`,
  },
  worn: {
    a: (person, item) => `Lo que lleva ${person} al empezar: ya no ${item}.`,
    b: (person, item) => `Lo que lleva ${person} al empezar: ahora también ${item}.`,
  },
  underneath: {
    a: (person, item) => `Lo que conserva ${person} debajo: ya no ${item}.`,
    b: (person, item) => `Lo que conserva ${person} debajo: ahora también ${item}.`,
  },
  layers: (person) => `Orden en que ${person} lleva las prendas, de dentro hacia fuera`,
  starts: (person) => `Dónde está ${person} al empezar`,
  hand: (person, side) =>
    `La mano que ${person} usa primero es ahora la ${side === 'left' ? 'izquierda' : 'derecha'}.`,
  bare: {
    a: (place) => `Ya no se deja al descubierto a propósito: ${place}.`,
    b: (place) => `Ahora se deja al descubierto a propósito: ${place}.`,
  },
  zone: {
    a: (zone) => `Zona suprimida: ${zone}.`,
    b: (zone) => `Zona nueva: ${zone}.`,
  },
  fixture: {
    a: (fixture) => `Ya no está en la sala: ${fixture}.`,
    b: (fixture) => `Nuevo en la sala: ${fixture}.`,
  },
  fixtureFields: {
    kind: 'qué es',
    zone: 'dónde está',
    clean: 'si debe mantenerse limpio',
    worked: 'cómo se acciona',
    product: 'de qué está empapado',
  },
  beforeNow: (what, before, now) => `${what}: antes, ${before}; ahora, ${now}`,
  worked: {
    hand: 'con la mano',
    elbow: 'con el codo',
    pedal: 'con pedal',
    sensor: 'sin contacto',
    open: 'queda abierto',
  },
  yesNo: { yes: 'sí', no: 'no' },
  none: 'nada',
  product: {
    a: (product) => `Ya no figura entre los productos: ${product}.`,
    b: (product) => `Nuevo entre los productos: ${product}.`,
  },
  states: {
    contaminated: 'contaminado',
    uncontaminated: 'considerado no contaminado',
    maybe: 'quizá contaminado',
  },
  start: (surface) => `Lo que se declara al empezar sobre ${surface}`,
  spraying: {
    yes: 'La pulverización cuenta ahora como limpieza.',
    no: 'La pulverización ya no cuenta como limpieza.',
  },
  observer: 'Confianza puesta en el observador',
  dependence: (much) => `se equivoca a la vez que la persona equipada: ${much}`,
  dependences: {
    zero: 'nunca',
    low: 'rara vez',
    moderate: 'a veces',
    high: 'a menudo',
    complete: 'siempre',
  },
  accepted: {
    a: 'Ya no se acepta por escrito',
    b: 'Se acepta ahora por escrito',
    both: 'Aceptado por escrito en otros términos',
  },
  saidBy: ({ by, date, review, reason }) => `por ${by} el ${date}, a revisar el ${review}: «${reason}»`,
  departureAt: (what, step) => `${what} – ${step}`,
};
