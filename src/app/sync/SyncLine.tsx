// A line above every page where entries do not get to the server: somebody must know before the tablet is put away.
import { Link } from 'wouter';
import { heldBack, statusOf } from '../../sync/status.ts';
import { SYNC } from './labels.ts';
import { SyncState } from './ServerSection.tsx';
import { useSync } from './useSync.ts';

export function SyncLine() {
  const shown = useSync();
  const status = shown && statusOf(shown.state, shown.written);
  const isTold = status !== undefined && (status.is === 'refused' || heldBack(status) > 0);
  return (
    <output>
      {shown && isTold && (
        <span className="notice">
          <SyncState shown={shown} /> <Link href="/device">{SYNC.more}</Link>
        </span>
      )}
    </output>
  );
}
