// The papers' own sentences in French. Machine-made: every paper says so until a clinician signs the language off.
import { FRENCH } from '../fr/grammar.ts';
import { typeset } from '../romance/typeset.ts';
import type { PrintWords } from './printWords.ts';

const WRITTEN: Omit<PrintWords, 'set'> = {
  document: {
    chart: 'Affiche murale',
    script: "Texte à lire à voix haute par l'observateur",
    card: 'Carte de poche',
    'sign-off': 'Fiche de validation',
    dossier: 'Dossier pour le comité',
  },
  version: (version) => `version ${version}`,
  hash: (hash) => `empreinte ${hash}`,
  undated: 'sans date',
  stage: {
    'not-recorded': 'APPROBATION NON ENREGISTRÉE',
    draft: 'BROUILLON, NON APPROUVÉ',
    review: 'EN RELECTURE, NON APPROUVÉ',
    approved: 'approuvé',
    retired: 'RETIRÉ, PLUS EN VIGUEUR',
  },
  approvedOn: (day) => `approuvé le ${day}`,
  invented: 'INVENTÉ, pour démonstration seulement',
  page: 'Page {page} sur {pages}',
  defers:
    "Complète, sans les remplacer, la procédure approuvée de l'unité et les recommandations nationales.",
  cautions: 'Mises en garde',
  errors: (count) =>
    count === 0
      ? "La vérification n'a relevé aucun point à corriger ou à accepter au préalable. Cela ne signifie pas que la procédure est sûre."
      : `La vérification a relevé ${count} ${count === 1 ? 'point' : 'points'} à corriger, ou à accepter par écrit, avant d'utiliser cette procédure.`,
  seeDossier: 'Voir son dossier pour le comité.',
  who: 'Qui',
  what: 'Quoi',
  unfinished:
    "La vérification n'a pas pu être menée à terme : images et arrêts ne montrent pas ce qui est contaminé.",
  zone: { patient: 'côté patient', doffing: 'zone de déshabillage', clean: 'côté propre' },
  standing: 'debout',
  sitting: (fixture) => `assis (${fixture})`,
  part: (part, parts, from, to) => `Partie ${part} sur ${parts} : étapes ${from} à ${to}`,
  stepsOf: (from, to) => `étapes ${from} à ${to}`,
  wears: (who) => `${who} porte, dans l'ordre d'enfilage`,
  hatched:
    "Hachuré : contaminé au début de l'étape, même si personne ne fait de faux pas. Sans hachures ne veut pas dire propre.",
  outlined: "Contour épais : ce que l'étape concerne.",
  helps: 'aide',
  picture: (label, worn, contaminated) =>
    `Image : ${label}. Porté, de l'extérieur vers l'intérieur : ${worn}. ${contaminated === '' ? 'Rien de hachuré.' : `Hachuré : ${contaminated}.`}`,
  result: { 'no-deviation': 'Aucun écart vu', 'not-seen': 'Non vu', deviation: 'Écart' },
  blanks: {
    assessor: 'Évaluateur',
    date: 'Date',
    begun: 'Début',
    ended: 'Fin',
    validUntil: "Valable jusqu'au",
    signature: 'Signature',
    remarks: 'Remarques',
  },
  script: {
    rules: [
      'Lire une ligne à voix haute. Attendre.',
      "Regarder jusqu'à la fin du geste. Attendre la réponse.",
      "Cocher une seule case : ce qui n'a pas été vu est « non vu ».",
      "En cas d'écart, dire « Stop ». Personne ne bouge. Suivre le plan d'exposition.",
      'À ARRÊT, attendre que toutes les mains soient immobiles, puis reprendre.',
    ],
    step: 'Étape',
    call: 'Lire à voix haute',
    answer: 'Réponse',
    done: 'Fait.',
    looked: 'Examiné. Je\u00a0vois\u00a0…',
    ready: 'Prêt.',
    note: 'Note',
    holdMark: 'ARRÊT',
    hold: (who, next) =>
      `ARRÊT. Mains désormais considérées comme contaminées (${who}) : loin du visage, du corps et du mobilier.${next === undefined ? '' : ` Elles sont nettoyées à l'étape ${next}.`}`,
  },
  signOff: {
    statement:
      "La personne nommée ci-dessous a exécuté cette version de la procédure du début à la fin sous observation. Ce qui a été vu est coché étape par étape ; cela ne dit rien de ce qui n'a pas pu être vu.",
    results: [
      'Aucun écart vu dans les étapes qui ont pu être vues',
      "Écart vu : l'exercice est à refaire",
      "Certaines étapes n'ont pas été vues : l'exercice est à refaire",
    ],
    assessed: 'Étape par étape',
    signatures: 'Noms et signatures',
  },
  dossier: {
    procedure: 'La procédure',
    people: 'Personnes et équipement porté',
    starts: 'Commence en',
    fixtures: 'Local',
    agents: 'Vérifiée contre',
    products: 'Produits',
    steps: 'Étapes',
    findings: 'Constats',
    noFindings: 'Aucun. Cela ne signifie pas que la procédure est sûre.',
    route: 'Chemin',
    mends: 'Corrections essayées qui aident',
    noMend: (tried) =>
      tried === undefined
        ? "Aucune correction n'a été essayée."
        : `Corrections essayées : ${tried}. Aucune n'aide à elle seule.`,
    practiceSource: 'Repose sur',
    departures: 'Écarts de pratique acceptés',
    noDepartures: 'Aucun.',
    unmatched: 'non relevé par cette vérification',
    finding: 'Constat',
    where: 'Où',
    everywhere: 'partout',
    reason: 'Motif',
    acceptedBy: 'Accepté par',
    review: 'À revoir',
    surfaces: 'Surfaces protégées',
    surfacesNote:
      'Barrières : nombre minimal de faux pas et de circonstances nécessaires. Les probabilités sont des repères relatifs pour comparer des procédures ; chacune est donnée avec ce sur quoi elle repose.',
    surface: 'Surface',
    barriers: 'Barrières',
    combinations: 'Combinaisons',
    chance: 'Probabilité',
    interval: 'Intervalle à 90 %',
    status: 'Repose sur',
    unreached: (count) => `Surfaces protégées pour lesquelles aucun chemin n'a été trouvé : ${count}.`,
    sources: 'Sources',
    ownSource: 'Source de la procédure',
    seen: 'Vu à la source',
    memory: 'De mémoire',
    interpreted: 'Interprété par nous',
    numbers: 'Sources des règles et des probabilités utilisées',
    method: 'Méthode',
    methodLines: [
      'Chaque étape est traduite en contacts entre surfaces, selon les tables des techniques.',
      'Chaque surface porte la condition sous laquelle elle est contaminée : les faux pas et circonstances nécessaires. Toutes les conditions sont calculées exactement, ensemble.',
      "Ce qui faisait face au patient est contaminé au départ. Un contact transmet dans les deux sens. Un nettoyage ne compte que si le produit agit contre l'agent.",
      'Chaque constat donne son chemin, et des modifications ont été essayées : chaque correction citée a été calculée sur toute la procédure.',
      'Chaque étape a aussi été omise et déplacée, une à la fois ; ce qui empire est cité.',
      'Les probabilités découlent de celles de chaque faux pas et circonstance ; les intervalles, de nombreux tirages de celles-ci.',
    ],
    limits: 'Limites',
    limitLines: [
      "Seuls sont connus les contacts, faux pas et circonstances des tables. Ce qu'elles ne contiennent pas n'est pas trouvé.",
      'Un contact transmet ou non la contamination : quantités, séchage et dose ne sont pas modélisés.',
      'La plupart des probabilités reposent sur un jugement. Elles servent à comparer des procédures, non à estimer le risque pour une personne.',
      "Ajustement, tailles, fatigue, chaleur et particularités d'un fabricant ne sont pas modélisés.",
      "Ne rien trouver, ou ne voir aucun écart, ne signifie pas qu'une procédure ou une personne est exempte de contamination.",
    ],
  },
};

/** With the spaces that French print sets before its signs. */
export const PRINT_FR: PrintWords = { ...typeset(WRITTEN, FRENCH.set), set: FRENCH.set };
