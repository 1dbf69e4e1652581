// How long what people write in a procedure may be, in characters as a program counts them (UTF-16 code units). The house's own
// choice, in this one place: every published procedure fits with room to spare, a title still stands in one head of a page and of a
// paper, and nothing that the journal keeps of a version is longer than the journal takes.

export const LONGEST = {
  /** One line: titles, publishers, roles, names of files, codes. */
  label: 200,
  /** The name of a version, as the journal keeps it. */
  version: 32,
  /** The name of a person, a fixture or a step within the file. */
  name: 64,
  /** Of a zone: its floor is called like it, with `-floor` behind. */
  zone: 58,
  /** Beside a step or a surface, as it is read and printed there. */
  note: 400,
  /** What is told at length: what it is about, reasons, what was read at a source. */
  text: 2000,
} as const;

/** Cut to what fits; a sign says that something is missing. */
export const cutTo = (most: number, text: string): string =>
  text.length > most ? `${text.slice(0, most - 1).replace(/[\uD800-\uDBFF]$/, '')}…` : text;

/** A name of the file cut to what fits: no half of a character and no hyphen at its end. */
export const cutName = (name: string, most: number = LONGEST.name): string =>
  name.length > most
    ? name
        .slice(0, most)
        .replace(/[\uD800-\uDBFF]$/, '')
        .replace(/-+$/, '')
    : name;

/** The same name with a number behind it, no longer than a name may be. */
export const numberedName = (name: string, number: number, most: number = LONGEST.name): string =>
  `${cutName(name, most - String(number).length - 1)}-${number}`;
