// The board of a procedure for its pictures, worked out once beside the page.
import { useEffect, useState } from 'react';
import type { Procedure } from '../../../domain/procedure.ts';
import type { Board } from '../../model/board.ts';
import { boardFor } from '../shell/search.ts';

/**
 * Procedures arrive anew with every line: the board is asked for again only where the steps differ. Once another way on was
 * taken, the board of the steps before is not of these: until theirs is there, there is none.
 */
export function useBoard(procedure: Procedure): Board | undefined {
  const [made, setMade] = useState<{ readonly text: string; readonly board: Board | undefined }>();
  const text = JSON.stringify(procedure);
  useEffect(() => {
    let current = true;
    const keep = (board: Board | undefined): void => {
      if (current) setMade({ text, board });
    };
    boardFor(JSON.parse(text) as Procedure).then(keep, () => keep(undefined));
    return () => {
      current = false;
    };
  }, [text]);
  return made?.text === text ? made.board : undefined;
}
