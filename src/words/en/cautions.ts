// What Doffline must say of itself in every shell: README, page, prints and command line read it from here.

export const CAUTIONS = [
  "Doffline supports and does not replace the unit's approved procedure, national guidance, local rules, " +
    'equipment instructions, fit testing, occupational health and licensed judgement.',
  'A check that finds nothing does not mean that a procedure is safe: it knows only the contacts, slips and ' +
    'circumstances that its tables hold.',
  'Chances are relative guides for comparing procedures. Most rest on judgement, and it says so beside them.',
  "In a real breach follow the unit's exposure plan and call the people it names.",
] as const;
