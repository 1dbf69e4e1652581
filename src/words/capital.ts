// The one change of letters that sentences need: a phrase of a table at the beginning of a line. Never by the machine's own locale,
// so that the same sentence is the same everywhere.

export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
