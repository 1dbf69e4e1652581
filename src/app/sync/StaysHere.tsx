// Beside the beginning of an exit: nothing stops one, but whoever begins it is told where its entries do not go.
import { useBar } from '../journal/useBar.ts';
import { EXIT_STAYS } from './labels.ts';
import { useSync } from './useSync.ts';

/** The server knows no such device any more, until it is paired again. */
const OUT: ReadonlySet<string> = new Set(['device-revoked', 'not-paired']);

export function StaysHere() {
  const bar = useBar('exit.started');
  const code = useSync()?.state.refused?.code;
  const isOut = code !== undefined && OUT.has(code);
  if (!isOut && bar === undefined) return null;
  return (
    <p className="notice" role="note">
      {isOut ? EXIT_STAYS.out : `${bar} ${EXIT_STAYS.role}`}
    </p>
  );
}
