// Findings and routes in French.
import type { Phrase } from '../romance/grammar.ts';
import { capital } from '../capital.ts';
import type { AcceptanceTable, AcceptanceTold } from '../accepted.ts';
import type { Findings, Routes } from '../romance/tongue.ts';
import { agree, de, does, is, it, to, FRENCH } from './grammar.ts';

const { quoted } = FRENCH;

const mayBe = (surface: Phrase): string =>
  `${surface.many ? 'peuvent' : 'peut'} être ${agree('contaminé', surface)}`;

const entryOf = ({ entry, where, by, date }: AcceptanceTold): string =>
  `L'entrée ${entry} de ce qui est accepté par écrit${where === '' ? '' : `, pour ${where}`}, par ${quoted(by)} le ${date},`;

const ACCEPTANCES: AcceptanceTable = {
  unmatched: (told) => ({
    title: `Accepté par écrit, mais non relevé : ${told.what}`,
    text: `${entryOf(told)} ne porte sur rien de ce que relève cette vérification : elle n'est peut-être plus nécessaire, ou vise une autre étape ou une autre surface. Retirez-la, ou indiquez où elle vaut.`,
  }),
  void: (told) => ({
    title: `Ne peut pas être accepté par écrit : ${told.what}`,
    text: `${entryOf(told)} n'accepte rien : seuls peuvent être acceptés un écart à une pratique publiée, un endroit laissé découvert, ou un équipement laissé en place ou ouvert. Corrigez ce qu'elle vise, puis retirez-la.`,
  }),
  overdue: (told) => ({
    title: `Accepté par écrit, mais la date de réexamen est passée : ${told.what}`,
    text: `${entryOf(told)} devait être réexaminée le ${told.review}. Une version qui la contient n'est ni soumise à relecture ni approuvée tant qu'elle n'est pas acceptée à nouveau, par une fonction et avec une nouvelle date de réexamen, ou que l'étape n'est pas corrigée.`,
  }),
};

export const FINDINGS: Findings = {
  also: (surfaces) => ` Atteint aussi : ${surfaces}.`,
  moreSurfaces: (count) => (count === 1 ? '1 autre surface' : `${count} autres surfaces`),
  open: ({ surface, where, also, why }) => ({
    title: `Voie ouverte vers ${surface.text}`,
    text: `${capital(surface.text)} ${mayBe(surface)} ${to(where.text)} sans aucun faux pas.${also} ${why}`,
  }),
  byDesign: ({ surface, where, why }) => ({
    title: `${capital(surface.text)} : ${agree('contaminé', surface)} par conception`,
    text: `À partir ${de(where)}, la procédure tient ${surface.text} pour ${agree('contaminé', surface)} sans aucun faux pas, et doit en tenir compte. ${why}`,
  }),
  oneSlip: ({ surface, clauses, events, also, seen, why }) => ({
    title: `À un faux pas près : ${surface.text} (${clauses})`,
    text: `Il suffit de ceci : ${events}. Alors ${surface.text} ${mayBe(surface)}.${also}${seen} ${why}`,
  }),
  seen: {
    circumstance: ' Cela arrive sans faux pas, et personne ne peut le voir arriver.',
    visible: ' Un observateur pourrait le voir.',
    hidden: ' Un observateur ne pourrait pas le voir.',
  },
  practice: (where, aside, rule, compare) =>
    `${capital(where.text)} s'écarte de cette pratique${aside} : ${rule}${compare}`,
  compare: (steps) => ` À comparer avec ${steps}.`,
  when: { before: 'avant', after: 'après' },
  variant: ({ label, where, target, surface, before, after, unseen }) => {
    const what =
      target === undefined ? 'omise' : target === 1 ? 'faite en premier' : `faite en position ${target}`;
    const notice = unseen ? ' Rien dans la suite de la procédure ne le montrerait.' : '';
    return {
      title: `${capital(label)} : pire si l'étape est ${what}`,
      text: `Si ${where.text} est ${what}, les barrières devant ${surface.text} changent : ${before} -> ${after}.${notice}`,
    };
  },
  leftOn: (item) => ({
    title: `${capital(item.text)} : encore en place à la fin`,
    text: `${capital(item.text)} ${is(item)} encore ${agree('porté', item)} à la fin de la procédure, et aucune étape ne ${it(item)} retire.`,
  }),
  leftOpen: (item) => ({
    title: `${capital(item.text)} : attaches laissées ouvertes`,
    text: `${capital(item.text)} ${is(item)} ${agree('enfilé', item)} et aucune étape ne ${it(item)} ferme avant d'être face au patient.`,
  }),
  bare: (surface, who, onPurpose) => ({
    title: `${capital(surface.text)} : non ${agree('couvert', surface)}`,
    text: `Rien de ce que porte ${who.text} ne couvre ${surface.text} face au patient.${onPurpose ? ' La procédure indique que cela est voulu.' : ''}`,
  }),
  accepted: (by, date, review, reason) =>
    ` Accepté par écrit par ${quoted(by)} le ${date}, à réexaminer le ${review} : ${quoted(reason)}`,
  acceptance: ACCEPTANCES,
};

export const ROUTES: Routes = {
  atStart: 'Au départ',
  startEvents: (clauses) => `Au départ, ${clauses}.`,
  startTaken: (surface, reason) => {
    const because = {
      stated:
        reason.why === 'stated' && reason.reason
          ? `la procédure le dit : ${quoted(reason.reason)}`
          : 'la procédure le dit',
      faced: 'exposition face au patient',
      'patient-side': 'placement du côté du patient',
      'sat-on': "toute personne dont l'équipement est encore contaminé s'y assoit",
      touched: 'contact antérieur',
    }[reason.why];
    return `Au départ, ${surface.text} ${is(surface)} ${agree('tenu', surface)} pour ${agree('contaminé', surface)} (${because}).`;
  },
  contact: {
    leaks: (one, other) => `ce qui se trouve sur ${one.text} atteint ${other.text}`,
    stands: (one, other) => `${one.text} se pose sur ${other.text}`,
    lies: (one, other) => `${one.text} repose sur ${other.text}`,
    touches: (one, other) => `${one.text} ${does('touch', one)} ${other.text}`,
  },
  mayBe: (surface) =>
    `${surface.text} ${surface.many ? 'peuvent' : 'peut'} désormais être ${agree('contaminé', surface)}`,
  failure: (clause) => `${clause}, et ce qui était contaminé le reste`,
  turns: {
    suspect: 'contamination possible par un faux pas ou une circonstance',
    certain: 'contamination tenue pour acquise sans aucun faux pas',
    lessened: "contamination maintenue seulement si quelque chose s'est mal passé",
    cleared: "n'est plus compté comme contaminé : désinfecté, remplacé ou parti",
  },
  cleaned: (surface) => `${surface.text} ${is(surface)} ${agree('désinfecté', surface)}`,
};
