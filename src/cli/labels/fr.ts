// The command line's own words in French.
import type { CliLabels } from './labels.ts';

const counted = (count: number, one: string): string => `${count} ${one}${count > 1 ? 's' : ''}`;

export const FR: CliLabels = {
  language: 'fr',
  errors: (count) => counted(count, 'erreur'),
  notes: (count) => counted(count, 'remarque'),
  steps: (count) => counted(count, 'étape'),
  version: (version) => `version ${version}`,
  invented: 'inventé',
  against: (agents) => `vérifié pour : ${agents.join(' et ')}`,
  reachable: (agent) => `Surfaces protégées que quelque chose peut atteindre, ${agent}`,
  barriers: 'barrières',
  chance: 'probabilité',
  surface: 'surface',
  none: 'aucune',
  others: (noRoute, count) =>
    count === 1
      ? `${noRoute} vers 1 autre surface protégée`
      : `${noRoute} vers ${count} autres surfaces protégées`,
  more: 'Pour en savoir plus : doffline explain FILE CODE-OR-SURFACE',
  start: 'départ',
  step: (number) => `étape ${number}`,
  accepted: 'accepté',
  checkedAgainst: (agent) => `Vérifié pour un ${agent}.`,
  ownWording: "Formulation propre à l'unité.",
  route: 'Voie :',
  mends: 'Ce qui le corrigerait (chaque correction a été essayée) :',
  restsOn: 'Repose sur :',
  replay: 'Rejouer',
  nobodySlips: 'aucun faux pas nécessaire',
  andAlso: ' ; et ',
  interval: (low, high) => `90 % : ${low} à ${high}`,
  combinations: (count, orders) =>
    `${count} combinaisons minimales de faux pas et de circonstances${orders ? ` ; selon leur nombre, ${orders}` : ''}`,
  barriersNow: (any, atEnd) => `Barrières : ${any} à tout moment, ${atEnd} à la fin`,
  theRest: '... la suite : doffline check --json',
  routeOfFirst: 'Voie de la première :',
  routeThough: 'Voie sans aucun faux pas :',
  neverSuspect: 'Jamais en cause : aucune voie trouvée.',
  whenChanged: 'Quand cela a changé :',
  notProtected: "Surface non protégée : elle peut être contaminée, et compte par ce qu'elle touche.",
  about: 'Constats à son sujet',
  takenAtStart: (surfaces) => `Au départ, tenu pour contaminé : ${surfaces}.`,
  stillAtEnd: 'encore à la fin',
  notAtEnd: 'plus à la fin',
  reached: 'Surfaces protégées qui peuvent être contaminées :',
  notReached: "Aucune surface protégée n'est atteinte par ces seuls faux pas.",
  nobody: 'Aucun faux pas.',
  goesWrong: 'Ce qui se passe mal :',
};
