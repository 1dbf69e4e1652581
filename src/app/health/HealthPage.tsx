// The page for occupational health: who is at the door, and behind it reading, writing and who read. One address and one title,
// whatever is shown.
import { Behind, type InsideProps, PlainNote } from '../door/Door.tsx';
import { useDoor } from '../door/useDoor.ts';
import { useTitle } from '../parts/useTitle.ts';
import { HEALTH } from './labels.ts';
import { LetIn } from './LetIn.tsx';
import { HEALTH_HOUSE } from './model.ts';
import { Read } from './Read.tsx';
import { Readings } from './Readings.tsx';
import { Waiting } from './Waiting.tsx';
import { Write } from './Write.tsx';

function Inside({ guest, keeper: { met } }: InsideProps) {
  return (
    <>
      <Read met={met} />
      <Write met={met} />
      <Readings met={met} />
      <LetIn self={guest.account.id} met={met} />
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
        who={({ account }, stage) => {
          if (stage !== 'other') return HEALTH.signedInAs(account.name);
          return account.health === 'waits' ? HEALTH.waits(account.name) : HEALTH.otherRole(account.role);
        }}
        inside={Inside}
        other={Waiting}
      />
    </div>
  );
}
