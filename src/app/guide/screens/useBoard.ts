// The board of a procedure for its pictures, worked out once beside the page.
import { useEffect, useState } from 'react';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Board } from '../../model/board.ts';
import { boardFor } from '../shell/search.ts';

/** Procedures arrive anew with every line: the board is asked for again only where the steps differ. */
export function useBoard(procedure: Procedure): Board | undefined {
  const [board, setBoard] = useState<Board>();
  const text = JSON.stringify(procedure);
  useEffect(() => {
    let current = true;
    boardFor(JSON.parse(text) as Procedure).then(
      (made) => current && setBoard(made),
      () => current && setBoard(undefined),
    );
    return () => {
      current = false;
    };
  }, [text]);
  return board;
}
