// What a procedure cannot do, in Portuguese: what is wrong, without a capital and a full stop, and how to mend it.
import type { Problems } from '../romance/tongue.ts';
import type { WrongAndMend } from '../words.ts';
import { agree, by as through, de, is, within } from './grammar.ts';

const say = (wrong: string, mend: string): WrongAndMend => ({ wrong, mend });

export const PROBLEMS: Problems = {
  codes: {
    'not-worn': ({ item, who }) =>
      say(
        `${who.text} não está com ${item.text} nesta etapa`,
        'Corrija o que está vestido no início, ou elimine ou mova a etapa.',
      ),
    'held-by': ({ item, by }) =>
      say(
        `${item.text} ${is(item)} ${agree('pres', item)} ${through(by.text)}, ainda por cima`,
        `Retire ${by.text} antes desta etapa.`,
      ),
    'already-worn': ({ item, who }) =>
      say(
        `${who.text} já está com ${item.text}`,
        'Elimine a etapa, ou faça retirar antes o que já está vestido.',
      ),
    'no-glove-beneath': ({ hand }) =>
      say(
        `uma luva externa é colocada ${within(hand.text)}, que está sem luva`,
        'Coloque antes uma luva interna, ou indique luvas simples.',
      ),
    'still-fastened': ({ item }) =>
      say(
        `${item.text} ainda ${is(item)} ${agree('fechad', item)}`,
        `Solte os fechos ${de(item)} antes desta etapa.`,
      ),
    'already-open': ({ item }) =>
      say(`${item.text} já ${is(item)} ${agree('abert', item)}`, 'Elimine a etapa.'),
    'helper-missing': () =>
      say(
        'isto não pode ser feito sem ajuda, e ninguém é indicado para ajudar',
        'Indique alguém para ajudar, ou escolha uma maneira que não precise disso.',
      ),
    'helper-elsewhere': ({ who }) =>
      say(
        `${who.text} deve ajudar, mas está em outra área`,
        'Faça essa pessoa vir antes desta etapa, ou indique outra.',
      ),
    'owner-elsewhere': ({ who }) =>
      say(
        `${who.text}, a quem pertence este equipamento, está em outra área`,
        'Reúna as duas pessoas em uma mesma área antes desta etapa.',
      ),
    'fixture-missing': ({ fixture }) =>
      say(
        `falta aqui algo necessário: ${fixture.text}`,
        `Acrescente ${fixture.text} à área, ou escolha outra maneira.`,
      ),
    'fixture-elsewhere': ({ fixture }) =>
      say(`${fixture.text} está em outra área`, 'Vá até lá antes desta etapa, ou use o que há nesta área.'),
    'not-a-seat': ({ fixture }) => say(`${fixture.text} não é um assento`, 'Indique uma cadeira.'),
    'not-seated': () =>
      say('isto se faz em posição sentada, e ninguém se sentou', 'Sente-se antes desta etapa.'),
    'not-standing': () =>
      say('isto se faz em pé, e a pessoa paramentada está sentada', 'Levante-se antes desta etapa.'),
    'dirty-seat': ({ fixture }) =>
      say(
        `isto se faz em um assento reservado às etapas limpas, e ${fixture.text} não é`,
        'Passe para a cadeira limpa antes desta etapa.',
      ),
    'product-unsuited': ({ product, surface }) =>
      say(
        `produto inadequado (${product}): não deve ser usado ${within(surface.text)}, e por isso não desinfeta nada aqui`,
        'Escolha um produto próprio para isso.',
      ),
    'technique-unclear': ({ action }) =>
      say(
        `há várias maneiras de fazer isto${action === undefined ? '' : ` (${action})`}, e nenhuma é indicada`,
        'Indique a técnica.',
      ),
    'nothing-to-clean': () =>
      say(
        'não há nada aqui que esta etapa possa desinfetar',
        'Indique o que deve ser desinfetado, ou elimine a etapa.',
      ),
  },
  layering: {
    'never-put-on': (item) =>
      say(
        `a desparamentação retira ${item.text}, que a paramentação nunca coloca`,
        'Faça as duas nomearem o mesmo equipamento.',
      ),
    'never-taken-off': (item) =>
      say(
        `a paramentação coloca ${item.text}, que a desparamentação não conhece`,
        'Faça as duas nomearem o mesmo equipamento.',
      ),
    'other-way-round': (item, by) =>
      say(
        `a paramentação coloca ${by.text} por cima ${de(item)}, a desparamentação supõe o contrário`,
        'Faça as duas dizerem o que cobre o quê.',
      ),
    other: () =>
      say(
        'a desparamentação contradiz a ordem em que a paramentação sobrepôs o equipamento',
        'Faça as duas dizerem o que cobre o quê.',
      ),
  },
  notWorkedOut: say(
    'as falhas não foram examinadas, porque são demais ou estão emaranhadas demais para um cálculo exato',
    'Divida o procedimento; o que consta abaixo é válido, mas não é toda a resposta.',
  ),
};
