// Findings and routes in Spanish.
import type { Phrase } from '../romance/grammar.ts';
import { capital } from '../capital.ts';
import type { AcceptanceTable, AcceptanceTold } from '../accepted.ts';
import type { Findings, Routes } from '../romance/tongue.ts';
import { agree, de, does, it, SPANISH, to } from './grammar.ts';

const { quoted } = SPANISH;

const mayBe = (surface: Phrase): string =>
  `${surface.many ? 'pueden' : 'puede'} estar ${agree('contaminad', surface)}`;

const entryOf = ({ entry, where, by, date }: AcceptanceTold): string =>
  `La entrada ${entry} de lo aceptado por escrito${where === '' ? '' : `, para ${where}`}, por ${quoted(by)} el ${date},`;

const ACCEPTANCES: AcceptanceTable = {
  unmatched: (told) => ({
    title: `Aceptado por escrito, pero no hallado: ${told.what}`,
    text: `${entryOf(told)} no trata de nada de lo que halla esta comprobación: quizá ya no haga falta, o se refiera a otro paso o a otra superficie. Retírela, o indique dónde vale.`,
  }),
  void: (told) => ({
    title: `No puede aceptarse por escrito: ${told.what}`,
    text: `${entryOf(told)} no acepta nada: solo puede aceptarse que el procedimiento se aparte de una práctica publicada, deje un lugar descubierto o deje un artículo puesto o abierto. Corrija aquello de lo que trata y retírela.`,
  }),
  overdue: (told) => ({
    title: `Aceptado por escrito, pero su fecha de revisión ha pasado: ${told.what}`,
    text: `${entryOf(told)} debía revisarse el ${told.review}. Una versión que la contiene no se envía a revisión ni se aprueba hasta que se acepte de nuevo, por un cargo y con una nueva fecha de revisión, o se corrija el paso.`,
  }),
};

export const FINDINGS: Findings = {
  also: (surfaces) => ` También alcanza: ${surfaces}.`,
  moreSurfaces: (count) => (count === 1 ? '1 superficie más' : `${count} superficies más`),
  open: ({ surface, where, also, why }) => ({
    title: `Vía abierta hasta ${surface.text}`,
    text: `${capital(surface.text)} ${mayBe(surface)} ${SPANISH.at(where.text)} aunque nadie cometa un fallo.${also} ${why}`,
  }),
  byDesign: ({ surface, where, why }) => ({
    title: `${capital(surface.text)}: ${agree('contaminad', surface)} por diseño`,
    text: `A partir ${de(where)}, el procedimiento da ${surface.text} por ${agree('contaminad', surface)} aunque nadie cometa un fallo, y debe tenerlo en cuenta. ${why}`,
  }),
  oneSlip: ({ surface, clauses, events, also, seen, why }) => ({
    title: `A un solo fallo: ${surface.text} (${clauses})`,
    text: `Basta con esto: ${events}. Entonces ${surface.text} ${mayBe(surface)}.${also}${seen} ${why}`,
  }),
  seen: {
    circumstance: ' Ocurre sin que nadie cometa un fallo, y nadie puede verlo.',
    visible: ' Un observador podría verlo.',
    hidden: ' Un observador no podría verlo.',
  },
  practice: (where, aside, rule, compare) =>
    `${capital(where.text)} se aparta de esta práctica${aside}: ${rule}${compare}`,
  compare: (steps) => ` Compárese con ${steps}.`,
  when: { before: 'antes', after: 'después' },
  variant: ({ label, where, target, surface, before, after, unseen }) => {
    const what =
      target === undefined
        ? 'se omite'
        : target === 1
          ? 'se hace primero'
          : `se hace en la posición ${target}`;
    const notice = unseen ? ' Nada en el resto del procedimiento lo mostraría.' : '';
    return {
      title: `${capital(label)}: peor si ${what}`,
      text: `Si ${where.text} ${what}, las barreras ante ${surface.text} cambian: ${before} -> ${after}.${notice}`,
    };
  },
  leftOn: (item) => ({
    title: `${capital(item.text)}: sin retirar al final`,
    text: `Al final del procedimiento todavía se ${item.many ? 'llevan' : 'lleva'} ${item.text}, y ningún paso ${it(item)} retira.`,
  }),
  leftOpen: (item) => ({
    title: `${capital(item.text)}: sin abrochar`,
    text: `Se ${item.many ? 'ponen' : 'pone'} ${item.text} y ningún paso ${it(item)} abrocha antes de estar frente al paciente.`,
  }),
  bare: (surface, who, onPurpose) => ({
    title: `${capital(surface.text)}: sin cubrir`,
    text: `Nada de lo que lleva ${who.text} cubre ${surface.text} frente al paciente.${onPurpose ? ' El procedimiento indica que es intencionado.' : ''}`,
  }),
  accepted: (by, date, review, reason) =>
    ` Aceptado por escrito por ${quoted(by)} el ${date}, a revisar el ${review}: ${quoted(reason)}`,
  acceptance: ACCEPTANCES,
};

export const ROUTES: Routes = {
  atStart: 'Al inicio',
  startEvents: (clauses) => `Al inicio, ${clauses}.`,
  startTaken: (surface, reason) => {
    const because = {
      stated:
        reason.why === 'stated' && reason.reason
          ? `lo dice el procedimiento: ${quoted(reason.reason)}`
          : 'lo dice el procedimiento',
      faced: 'exposición frente al paciente',
      'patient-side': 'situación en el lado del paciente',
      'sat-on': 'ahí se sienta quien todavía lleva equipo contaminado',
      touched: 'contacto anterior',
    }[reason.why];
    return `Al inicio, ${surface.text} se ${does('consider', surface)} ${agree('contaminad', surface)} (${because}).`;
  },
  contact: {
    leaks: (one, other) => `lo que hay sobre ${one.text} llega ${to(other.text)}`,
    stands: (one, other) => `${one.text} pisa ${other.text}`,
    lies: (one, other) => `${one.text} descansa sobre ${other.text}`,
    touches: (one, other) => `${one.text} ${does('toc', one)} ${other.text}`,
  },
  mayBe: (surface) =>
    `${surface.text} ${surface.many ? 'pueden' : 'puede'} estar ahora ${agree('contaminad', surface)}`,
  failure: (clause) => `${clause}, y lo que estaba contaminado lo sigue estando`,
  turns: {
    suspect: 'puede contaminarse por un fallo o una circunstancia',
    certain: 'se da por contaminado aunque nadie cometa un fallo',
    lessened: 'sigue contaminado solo si algo salió mal',
    cleared: 'ya no cuenta como contaminado: desinfectado, sustituido o retirado',
  },
  cleaned: (surface) => `se ${surface.many ? 'desinfectan' : 'desinfecta'} ${surface.text}`,
};
