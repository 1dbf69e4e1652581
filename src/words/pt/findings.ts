// Findings and routes in Portuguese.
import type { Phrase } from '../romance/grammar.ts';
import { capital } from '../capital.ts';
import type { AcceptanceTable, AcceptanceTold } from '../accepted.ts';
import type { Findings, Routes } from '../romance/tongue.ts';
import { agree, de, does, is, it, to, within, PORTUGUESE } from './grammar.ts';

const { quoted } = PORTUGUESE;

const mayBe = (surface: Phrase): string =>
  `${surface.many ? 'podem' : 'pode'} estar ${agree('contaminad', surface)}`;

const entryOf = ({ entry, where, by, date }: AcceptanceTold): string =>
  `A entrada ${entry} do que foi aceito por escrito${where === '' ? '' : `, para ${where}`}, por ${quoted(by)} em ${date},`;

const ACCEPTANCES: AcceptanceTable = {
  unmatched: (told) => ({
    title: `Aceito por escrito, mas não achado: ${told.what}`,
    text: `${entryOf(told)} não trata de nada do que esta verificação acha: talvez não seja mais necessária, ou se refira a outra etapa ou a outra superfície. Retire-a, ou indique onde vale.`,
  }),
  void: (told) => ({
    title: `Não pode ser aceito por escrito: ${told.what}`,
    text: `${entryOf(told)} não aceita nada: só pode ser aceito que o procedimento se afaste de uma prática publicada, deixe um lugar descoberto ou deixe um item vestido ou aberto. Corrija aquilo de que trata e retire-a.`,
  }),
  overdue: (told) => ({
    title: `Aceito por escrito, mas a data de revisão já passou: ${told.what}`,
    text: `${entryOf(told)} devia ser revista em ${told.review}. Uma versão que a contém não é enviada para revisão nem aprovada até que seja aceita de novo, por um cargo e com uma nova data de revisão, ou a etapa seja corrigida.`,
  }),
};

export const FINDINGS: Findings = {
  also: (surfaces) => ` Alcança também: ${surfaces}.`,
  moreSurfaces: (count) => (count === 1 ? 'mais 1 superfície' : `mais ${count} superfícies`),
  open: ({ surface, where, also, why }) => ({
    title: `Via aberta até ${surface.text}`,
    text: `${capital(surface.text)} ${mayBe(surface)} ${within(where.text)} mesmo sem nenhuma falha.${also} ${why}`,
  }),
  byDesign: ({ surface, where, why }) => ({
    title: `${capital(surface.text)}: ${agree('contaminad', surface)} por concepção`,
    text: `A partir ${de(where)}, o procedimento dá ${surface.text} como ${agree('contaminad', surface)} mesmo sem nenhuma falha, e deve levar isso em conta. ${why}`,
  }),
  oneSlip: ({ surface, clauses, events, also, seen, why }) => ({
    title: `A uma só falha: ${surface.text} (${clauses})`,
    text: `Basta isto: ${events}. Então ${surface.text} ${mayBe(surface)}.${also}${seen} ${why}`,
  }),
  seen: {
    circumstance: ' Acontece sem falha de ninguém, e ninguém consegue ver.',
    visible: ' Um observador poderia ver.',
    hidden: ' Um observador não poderia ver.',
  },
  practice: (where, aside, rule, compare) =>
    `${capital(where.text)} se afasta desta prática${aside}: ${rule}${compare}`,
  compare: (steps) => ` Compare com ${steps}.`,
  when: { before: 'antes', after: 'depois' },
  variant: ({ label, where, target, surface, before, after, unseen }) => {
    const what =
      target === undefined
        ? 'for omitida'
        : target === 1
          ? 'for feita primeiro'
          : `for feita na posição ${target}`;
    const notice = unseen ? ' Nada no resto do procedimento mostraria isso.' : '';
    return {
      title: `${capital(label)}: pior se a etapa ${what}`,
      text: `Se ${where.text} ${what}, as barreiras diante ${de(surface)} mudam: ${before} -> ${after}.${notice}`,
    };
  },
  leftOn: (item) => ({
    title: `${capital(item.text)}: sem retirada no fim`,
    text: `${capital(item.text)} ainda ${is(item)} em uso no fim do procedimento, e nenhuma etapa ${it(item)} retira.`,
  }),
  leftOpen: (item) => ({
    title: `${capital(item.text)}: sem fechar`,
    text: `${capital(item.text)} ${item.many ? 'são' : 'é'} ${agree('colocad', item)} e nenhuma etapa ${it(item)} fecha antes de estar diante do paciente.`,
  }),
  bare: (surface, who, onPurpose) => ({
    title: `${capital(surface.text)}: sem cobertura`,
    text: `Nada do que ${who.text} veste cobre ${surface.text} diante do paciente.${onPurpose ? ' O procedimento diz que isso é intencional.' : ''}`,
  }),
  accepted: (by, date, review, reason) =>
    ` Aceito por escrito por ${quoted(by)} em ${date}, a ser revisto em ${review}: ${quoted(reason)}`,
  acceptance: ACCEPTANCES,
};

export const ROUTES: Routes = {
  atStart: 'No início',
  startEvents: (clauses) => `No início, ${clauses}.`,
  startTaken: (surface, reason) => {
    const because = {
      stated:
        reason.why === 'stated' && reason.reason
          ? `o procedimento diz: ${quoted(reason.reason)}`
          : 'o procedimento diz',
      faced: 'exposição diante do paciente',
      'patient-side': 'posição no lado do paciente',
      'sat-on': 'nela se senta quem ainda está com equipamento contaminado',
      touched: 'contato anterior',
    }[reason.why];
    return `No início, ${surface.text} ${surface.many ? 'são' : 'é'} ${agree('dad', surface)} como ${agree('contaminad', surface)} (${because}).`;
  },
  contact: {
    leaks: (one, other) => `o que está ${within(one.text)} chega ${to(other.text)}`,
    stands: (one, other) => `${one.text} pisa ${within(other.text)}`,
    lies: (one, other) => `${one.text} fica sobre ${other.text}`,
    touches: (one, other) => `${one.text} ${does('toc', one)} ${within(other.text)}`,
  },
  mayBe: (surface) =>
    `${surface.text} ${surface.many ? 'podem' : 'pode'} agora estar ${agree('contaminad', surface)}`,
  failure: (clause) => `${clause}, e o que estava contaminado continua assim`,
  turns: {
    suspect: 'pode se contaminar por uma falha ou circunstância',
    certain: 'é dado como contaminado mesmo sem nenhuma falha',
    lessened: 'continua contaminado só se algo deu errado',
    cleared: 'deixa de contar como contaminado: desinfetado, trocado ou retirado',
  },
  cleaned: (surface) => `${surface.text} ${surface.many ? 'são' : 'é'} ${agree('desinfetad', surface)}`,
};
