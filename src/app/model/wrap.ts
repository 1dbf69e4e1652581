// Words into short lines for the drawing, which cannot wrap text by itself.

/** At most `lines` lines of about `width` characters; what does not fit ends in an ellipsis. */
export function wrapped(text: string, width: number, lines: number): readonly string[] {
  const out: string[] = [];
  for (const word of text.split(' ')) {
    const last = out.at(-1);
    if (last !== undefined && last.length + 1 + word.length <= width) out[out.length - 1] = `${last} ${word}`;
    else out.push(word);
  }
  if (out.length <= lines) return out;
  const kept = out.slice(0, lines);
  kept[lines - 1] = `${kept[lines - 1] ?? ''}…`;
  return kept;
}
