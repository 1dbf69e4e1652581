// A day in a sentence, never broken over two lines.

export function On({ day }: { readonly day: string }) {
  return (
    <time className="on-day" dateTime={day}>
      {day}
    </time>
  );
}
