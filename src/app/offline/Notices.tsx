// Lines above every page: what does not work at this address, and that a newer version is here.
import { Button } from 'react-aria-components';
import { SyncLine } from '../sync/SyncLine.tsx';
import { deviceNow } from './device.ts';
import { INSECURE, NEWER, SECURE_ADDRESS } from './labels.ts';
import { missing, thisWorld } from './support.ts';
import { loadNewer, useVersion } from './version.ts';

export function Notices() {
  const { newer, held } = useVersion();
  const insecure = missing('offline', thisWorld()) === 'insecure';
  return (
    <aside aria-label="Notices">
      {insecure && (
        <p className="notice" role="note">
          {INSECURE} <a href={SECURE_ADDRESS.at}>{SECURE_ADDRESS.says}</a>
        </p>
      )}
      <output>
        {newer && (
          <span className="notice">
            {held ? NEWER.held : NEWER.says}{' '}
            <Button className="button" onPress={() => loadNewer(deviceNow())}>
              {NEWER.load}
            </Button>
          </span>
        )}
      </output>
      <SyncLine />
    </aside>
  );
}
