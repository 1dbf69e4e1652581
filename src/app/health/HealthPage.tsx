// The page for occupational health: who is at the door, and behind it reading, writing and who read. One address and one title,
// whatever is shown.
import { Behind, type InsideProps, PlainNote } from '../door/Door.tsx';
import { useDoor } from '../door/useDoor.ts';
import { useTitle } from '../parts/useTitle.ts';
import { HEALTH } from './labels.ts';
import { HEALTH_HOUSE } from './model.ts';
import { Read } from './Read.tsx';
import { Readings } from './Readings.tsx';
import { Write } from './Write.tsx';

function Inside({ keeper: { met } }: InsideProps) {
  return (
    <>
      <Read met={met} />
      <Write met={met} />
      <Readings met={met} />
    </>
  );
}

export function HealthPage() {
  useTitle(HEALTH.title);
  const keeper = useDoor(HEALTH_HOUSE);
  return (
    <div className="narrow">
      <h1 tabIndex={-1}>{HEALTH.title}</h1>
      <p className="lead">{HEALTH.forWhom}</p>
      <p className="quiet">{HEALTH.kept}</p>
      <PlainNote />
      <Behind
        keeper={keeper}
        who={({ account }, stage) =>
          stage === 'other' ? HEALTH.otherRole(account.role) : HEALTH.signedInAs(account.name)
        }
        inside={Inside}
      />
    </div>
  );
}
