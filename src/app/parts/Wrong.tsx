// Why what was asked for was not done. It stands there empty, so that what is put into it is read out.

/** `text`: why; empty while nothing is wrong. */
export function Wrong({ text }: { readonly text: string }) {
  return (
    <p role="alert" className={text === '' ? '' : 'wrong'}>
      {text}
    </p>
  );
}
