// What a procedure cannot do, in Spanish: what is wrong, without a capital and a full stop, and how to mend it.
import type { Problems } from '../romance/tongue.ts';
import type { WrongAndMend } from '../words.ts';
import { agree, de, is } from './grammar.ts';

const say = (wrong: string, mend: string): WrongAndMend => ({ wrong, mend });

export const PROBLEMS: Problems = {
  codes: {
    'not-worn': ({ item, who }) =>
      say(
        `${who.text} no lleva ${item.text} en este paso`,
        'Corrija lo que se lleva al inicio, o elimine o mueva el paso.',
      ),
    'held-by': ({ item, by }) =>
      say(
        `${item.text} ${is(item)} ${agree('sujet', item)} por ${by.text}, todavía por encima`,
        `Retire ${by.text} antes de este paso.`,
      ),
    'already-worn': ({ item, who }) =>
      say(
        `${who.text} ya lleva ${item.text}`,
        'Elimine el paso, o haga retirar antes lo que ya está puesto.',
      ),
    'no-glove-beneath': ({ hand }) =>
      say(
        `se pone un guante exterior en ${hand.text}, que no lleva guante`,
        'Ponga antes un guante interior, o indique guantes simples.',
      ),
    'still-fastened': ({ item }) =>
      say(
        `${item.text} todavía ${is(item)} ${agree('abrochad', item)}`,
        `Suelte los cierres ${de(item)} antes de este paso.`,
      ),
    'already-open': ({ item }) =>
      say(`${item.text} ya ${is(item)} ${agree('abiert', item)}`, 'Elimine el paso.'),
    'helper-missing': () =>
      say(
        'esto no se puede hacer sin ayuda, y no se nombra a nadie que ayude',
        'Nombre a alguien que ayude, o elija una manera que no lo necesite.',
      ),
    'helper-elsewhere': ({ who }) =>
      say(
        `${who.text} debe ayudar, pero se encuentra en otra zona`,
        'Haga venir a esa persona antes de este paso, o nombre a otra.',
      ),
    'owner-elsewhere': ({ who }) =>
      say(
        `${who.text}, a quien pertenece este equipo, se encuentra en otra zona`,
        'Reúna a ambas personas en una misma zona antes de este paso.',
      ),
    'fixture-missing': ({ fixture }) =>
      say(
        `falta aquí algo necesario: ${fixture.text}`,
        `Añada ${fixture.text} a la zona, o elija otra manera.`,
      ),
    'fixture-elsewhere': ({ fixture }) =>
      say(
        `${fixture.text} se encuentra en otra zona`,
        'Vaya allí antes de este paso, o use lo que hay en esta zona.',
      ),
    'not-a-seat': ({ fixture }) => say(`${fixture.text} no es un asiento`, 'Indique una silla.'),
    'not-seated': () =>
      say('esto se hace en posición sentada, y nadie se ha sentado', 'Siéntese antes de este paso.'),
    'not-standing': () =>
      say('esto se hace de pie, y la persona equipada está sentada', 'Levántese antes de este paso.'),
    'dirty-seat': ({ fixture }) =>
      say(
        `esto se hace en un asiento reservado a los pasos limpios, y ${fixture.text} no lo es`,
        'Cámbiese a la silla limpia antes de este paso.',
      ),
    'product-unsuited': ({ product, surface }) =>
      say(
        `producto inadecuado (${product}): no se debe usar en ${surface.text}, así que aquí no desinfecta nada`,
        'Elija un producto previsto para ello.',
      ),
    'technique-unclear': ({ action }) =>
      say(
        `hay varias maneras de hacerlo${action === undefined ? '' : ` (${action})`}, y no se indica ninguna`,
        'Indique la técnica.',
      ),
    'nothing-to-clean': () =>
      say(
        'aquí no hay nada que este paso pueda desinfectar',
        'Indique qué se debe desinfectar, o elimine el paso.',
      ),
  },
  layering: {
    'never-put-on': (item) =>
      say(
        `la retirada quita ${item.text}, que la colocación nunca pone`,
        'Haga que ambas nombren el mismo equipo.',
      ),
    'never-taken-off': (item) =>
      say(
        `la colocación pone ${item.text}, que la retirada no conoce`,
        'Haga que ambas nombren el mismo equipo.',
      ),
    'other-way-round': (item, by) =>
      say(
        `la colocación pone ${by.text} por encima ${de(item)}, la retirada supone lo contrario`,
        'Haga que ambas digan qué cubre a qué.',
      ),
    other: () =>
      say(
        'la retirada contradice el orden en que la colocación superpuso el equipo',
        'Haga que ambas digan qué cubre a qué.',
      ),
  },
  notWorkedOut: say(
    'no se examinaron los fallos, porque son demasiados o están demasiado enredados para un cálculo exacto',
    'Divida el procedimiento; lo que figura a continuación es válido, pero no es toda la respuesta.',
  ),
};
