// What this device can do and holds: use without a network, what does not work at this address, whether the browser keeps
// what is recorded, the version.
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { HEALTH } from '../health/labels.ts';
import { useTitle } from '../parts/useTitle.ts';
import { ExitList } from '../sync/ExitPage.tsx';
import { ServerSection } from '../sync/ServerSection.tsx';
import { ABILITY, KEPT, LASTING, MISSING } from './labels.ts';
import { ABILITIES, missing, thisWorld } from './support.ts';
import { useVersion, VERSION } from './version.ts';

type Lasting = Exclude<keyof typeof LASTING, 'ask'>;

async function askToKeep(): Promise<Lasting> {
  if (!('storage' in navigator)) return 'unknown';
  try {
    return (await navigator.storage.persisted()) || (await navigator.storage.persist()) ? 'yes' : 'no';
  } catch {
    return 'unknown';
  }
}

/** Asks when it is first shown: whoever looks here wants to know. */
function KeepsRecords() {
  const [lasting, setLasting] = useState<Lasting>('asking');
  const ask = (): void => {
    askToKeep().then(setLasting, () => setLasting('unknown'));
  };
  useEffect(ask, []);
  return (
    <p>
      {LASTING[lasting]}{' '}
      {lasting === 'no' && (
        <Button className="button" onPress={ask}>
          {LASTING.ask}
        </Button>
      )}
    </p>
  );
}

export function DevicePage() {
  useTitle('This device');
  const { kept } = useVersion();
  const world = thisWorld();
  return (
    <div className="narrow">
      <h1>This device</h1>
      <h2>Without a network</h2>
      <p>{KEPT[kept]}</p>
      <ul className="plain">
        {ABILITIES.map((ability) => {
          const why = missing(ability, world);
          return (
            <li key={ability}>
              {ABILITY[ability]}: {why ? MISSING[why] : 'yes'}
            </li>
          );
        })}
      </ul>
      <h2>What is recorded here</h2>
      <KeepsRecords />
      <ServerSection />
      <p>
        <Link href="/health-records" className="inline-link">
          {HEALTH.title}
        </Link>{' '}
        lie on the unit’s server alone, for occupational health.
      </p>
      <ExitList />
      <h2>Version</h2>
      <p>Doffline {VERSION}</p>
    </div>
  );
}
