// What a password must be, for the server that judges it and the page that says so before it is sent. The house's own choice.

export const SHORTEST_PASSWORD = 12;
export const LEAST_DIFFERENT = 6;

/** Whether a password may be chosen by somebody of this name in a unit of this id. */
export function isStrong(password: string, ...known: readonly string[]): boolean {
  const small = password.toLowerCase();
  const guessable = known.some((word) => word.length > 3 && small.includes(word.toLowerCase()));
  return password.length >= SHORTEST_PASSWORD && new Set(small).size >= LEAST_DIFFERENT && !guessable;
}
