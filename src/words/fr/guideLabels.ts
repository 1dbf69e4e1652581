// What stands around the guide's lines, in French. Machine-made, as the language says of itself.
import type { GuideLabels } from '../guideLabels.ts';

export const GUIDE_LABELS: GuideLabels = {
  line: {
    night: 'Nuit',
    voiceOff: 'Couper la voix',
    more: 'Plus',
    allExits: 'Toutes les sorties',
    room: (name) => `Chambre ${name}`,
    step: (at, of) => `Étape ${at} sur ${of}`,
    saved: 'Enregistré',
    savedHere: (count) => `Gardé ici ; ${count} en attente`,
    colon: (label) => `${label} :`,
    spoken: (text) => `« ${text} »`,
    noVoice: 'Pas de voix pour cette langue ici : lisez vous-même.',
    goesDark: 'Cet écran peut se mettre en veille.',
    notices: 'Avis',
    moreNotices: 'Autres avis',
    whatIsOn: 'Ce qui est en cours',
    moreBelow: 'Suite plus bas',
    times: 'Temps',
    line: 'La ligne',
    before: 'La ligne précédente',
    beforeSays: "La ligne précédente, à relire seulement. Rien n'est annulé.",
    backToLineOn: 'Retour à la ligne en cours',
    backToLine: 'Retour à la ligne',
    answer: 'Réponse',
    signals: 'Signes de la main',
    record: 'Son compte rendu',
    ended: (time) => `Sortie terminée. ${time}`,
    tooLow: (millimetres, metres, wanted) =>
      `Majuscules de ${millimetres} mm ici : lisibles à ${metres} m, pas à ${wanted} m.`,
    unmeasured: "Cet écran n'a pas été mesuré.",
  },
  duty: {
    stopped: 'Arrêté. Vous seul dites quand reprendre.',
    emergency: 'Urgence : lisez chaque action à voix haute.',
    again: (names) => `Relisez à : ${names}`,
    watch: (names) => `Regardez : ${names}`,
    hold: "Arrêt : tout le monde s'immobilise",
    back: (names) => `Répète : ${names}`,
    ask: (names) => `Demandez à : ${names}`,
    own: 'Pour vous',
    read: (names) => `Lisez à voix haute à : ${names}`,
  },
  wrong: {
    press: 'Un problème',
    title: "Qu'est-ce qui s'est mal passé ?",
    other: 'Autre chose',
    touched: 'Ce qui a été touché, si vous avez pu le voir',
    notOne: 'Pas vu, ou plusieurs choses',
    ownWords: 'Avec vos propres mots (aucun nom)',
    early: "Pourquoi avant la fin ? C'est enregistré.",
    reason: 'Raison (aucun nom)',
    decline: "Pourquoi pas cette voie ? C'est enregistré.",
    declines: [
      'Impossible dans cette chambre',
      'La personne équipée a déjà passé ce point',
      'Trop long pour la personne équipée',
    ],
    bare: "Un endroit est nu ou n'a pas été vu. Pourquoi entrer quand même ?",
    goIn: 'Enregistrer et entrer',
  },
  suspects: {
    title: 'Ce qui est peut-être contaminé',
    after: 'Après ce qui a été noté',
    notWorkedOut:
      "Ce qui est suspect n'a pas pu être calculé : considérez comme suspect tout ce qui a été touché.",
    unseen: {
      one: 'avec 1 autre faux pas non vu',
      more: (count) => `avec ${count} autres faux pas non vus`,
    },
    andMore: (count) => `Et ${count} de plus.`,
    none: "Aucune surface n'est plus proche d'une contamination que la procédure telle que lue ne le prévoit.",
    unplaced: "Ce qui a été touché n'a pas été noté : considérez comme suspect ce qui était proche.",
    nothingBetter: "Rien de mieux trouvé que l'étape suivante telle qu'écrite.",
    notSought: 'Impossible de calculer si une autre suite est meilleure.',
    protected: 'Une zone protégée est peut-être contaminée : voir plus bas.',
    exposed: (places, button) => `Peut-être contaminé : ${places}. Plan d'exposition : touche ${button}.`,
    everything: 'tout ce qui a été touché',
    alsoOthers: (places, count) => `${places} et ${count} de plus`,
  },
  offer: {
    title: 'Une autre suite',
    heading: {
      one: 'Une autre suite. 1 endroit devient plus difficile à atteindre.',
      more: (count) => `Une autre suite. ${count} endroits deviennent plus difficiles à atteindre.`,
    },
    changed: {
      one: "1 endroit plus difficile à atteindre : faux pas et circonstances qu'il faut, tel que lu et avec cette suite, du moins au plus.",
      more: (count) =>
        `${count} endroits plus difficiles à atteindre : faux pas et circonstances qu'il faut, tel que lu et avec cette suite, du moins au plus.`,
    },
    unchanged: {
      one: '1 endroit demande autant que tel que lu, du moins au plus',
      more: (count) => `${count} endroits demandent autant que tel que lu, du moins au plus`,
    },
    what: { new: 'nouveau', moved: 'déplacé', 'left out': 'supprimé' },
    behind: (label) => `après : ${label}`,
    step: { one: (number) => `étape ${number}`, more: (numbers) => `étapes ${numbers}` },
    as: { one: (number) => `comme étape ${number}`, more: (numbers) => `comme étapes ${numbers}` },
  },
  handover: {
    to: 'Passer la main à',
    other: "Quelqu'un d'autre : initiales de l'observateur qui prend la suite",
    ask: 'Demander à cette personne',
    which: (name) => `${name} : quelle ligne a été confirmée en dernier ?`,
    noneYet: 'Aucune encore',
    initials: (role) => `Initiales (${role}) : une à quatre lettres.`,
    shared: (initials) =>
      `Deux personnes ont les initiales ${initials} : inscrivez d'abord l'une d'elles avec d'autres initiales.`,
    hasPart: (initials) =>
      `${initials} a déjà un rôle dans cette sortie : une autre personne prend la suite.`,
    twice: 'Deux rôles ont les mêmes initiales : une personne ne peut pas tenir les deux.',
  },
  key: {
    title: "Légende de l'image",
    contaminated: 'Contaminé',
    nothing: "Porté ; rien de connu ne l'atteint",
    changed: 'Changé à cette étape',
    planned: 'Selon la procédure',
    recorded: 'Avec ce qui a été noté',
  },
  display: {
    wearer: 'Écran de la personne équipée',
    assistant: "Écran de l'assistant",
    openWearer: "Ouvrir l'écran de la personne équipée",
    openAssistant: "Ouvrir l'écran de l'assistant",
    silent: "Plus rien n'arrive de l'écran de l'observateur. Écoutez l'observateur.",
    full: 'Plein écran',
    waits:
      'Ouvrez le guide de cette sortie dans une autre fenêtre de ce navigateur : sa ligne apparaîtra ici.',
  },
  overdue: {
    says: (what, since) =>
      `Accepté par écrit, à réexaminer au plus tard le ${since}, et cette date est passée : ${what}. Demandez un nouvel examen à un responsable de la prévention des infections.`,
    note: (what, since) =>
      `Commencé en connaissance de cause avec un écart accepté par écrit dont la date de réexamen, le ${since}, est passée : ${what}`,
  },
  opening: {
    guide: 'Le guide',
    looking: 'Recherche de la sortie …',
    unknown: 'Le journal de ce navigateur ne contient pas cette sortie.',
    notBegunHere:
      "Elle est dans le journal, mais ce navigateur n'a pas gardé ce dont ses lignes sont tirées. Continuez sur papier, à partir de sa dernière ligne notée.",
    otherLines:
      'Ses entrées ne correspondent pas à sa procédure. Continuez sur papier, à partir de sa dernière ligne notée.',
    elsewhere: 'Cette sortie est menée dans un autre onglet',
    elsewhereSays:
      "Un autre onglet ou une autre fenêtre de ce navigateur mène cette sortie. Rien n'est noté ici. Continuez là-bas, ou prenez la suite ici : l'autre s'arrête alors.",
    unsaved:
      "L'autre onglet a des notes non enregistrées et garde la sortie. Allez-y, faites de la place, appuyez sur « Enregistrer à nouveau » ; puis prenez la suite ici.",
    take: 'Prendre la suite ici',
  },
  coverage: {
    title: 'Ce que dit la vérification de la couverture',
    none: "Aucun endroit nu n'a été trouvé dans la procédure telle qu'écrite. Regardez quand même.",
  },
  suit: {
    title: 'Temps dans la tenue',
    since: (time) => `Dans la chambre depuis ${time}`,
    limit: (minutes) => `Limite de l'unité : ${minutes} min`,
  },
  breakOff: (note) => `${note}, ou raison de l'interruption (aucun nom)`,
  told: 'Dit par la personne équipée',
  noPlan:
    "Aucun plan de l'unité n'est gardé dans ce navigateur. Prenez-le sur papier ; sinon, appelez tout de suite le responsable de garde et la médecine du travail.",
};
