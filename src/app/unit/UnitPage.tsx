// The page of the unit's server: its beginning while there is no unit, then the door, and behind it what one's role may do.
import { useState } from 'react';
import { Behind, PlainNote, Shut, useLandOnHead } from '../door/Door.tsx';
import { DOOR } from '../door/labels.ts';
import { useDoor } from '../door/useDoor.ts';
import { useTitle } from '../parts/useTitle.ts';
import { DemoPeople } from './Demo.tsx';
import { SETUP, UNIT } from './labels.ts';
import { Lead } from './Lead.tsx';
import { ROLE } from './leadLabels.ts';
import { knownUnit, type People, UNIT_HOUSE, type UnitState } from './model.ts';
import { NotLead } from './NotLead.tsx';
import { Setup } from './Setup.tsx';
import { useSetupCode, useUnit } from './useUnit.ts';

interface StageProps {
  readonly state: UnitState;
  readonly code: string;
  /** Asks the server anew, and says why above what it answers. */
  readonly ask: (note?: string) => void;
}

function Beginning({ state, code, ask, made }: StageProps & { readonly made: (people: People) => void }) {
  const known = knownUnit(state);
  if (!state.waitsForLead) return <Shut says={UNIT.noCode} ask={() => ask()} />;
  return (
    <section aria-labelledby="unit-setup">
      <h2 id="unit-setup">{state.unit ? SETUP.again : SETUP.title}</h2>
      <p>{state.unit ? SETUP.againSays(state.unit.title) : known ? SETUP.known(known.title) : SETUP.says}</p>
      <Setup key={code} state={state} code={code} made={made} there={() => ask(SETUP.there)} />
    </section>
  );
}

function AtTheDoor(props: StageProps & { readonly made: (people: People) => void }) {
  const keeper = useDoor(UNIT_HOUSE);
  return (
    <>
      <Behind
        keeper={keeper}
        who={({ account, unit }) => UNIT.signedInAs(account.name, ROLE[account.role], unit.title)}
        inside={Lead}
        other={NotLead}
      />
      {keeper.door.is === 'out' && props.state.waitsForLead && <Beginning {...props} />}
    </>
  );
}

function Stage(props: StageProps) {
  const { state, ask } = props;
  const [people, setPeople] = useState<People>([]);
  if (people.length > 0) return <DemoPeople people={people} go={() => ask()} />;
  const made = (all: People): void => (all.length > 0 ? setPeople(all) : ask());
  return state.unit ? <AtTheDoor {...props} made={made} /> : <Beginning {...props} made={made} />;
}

export function UnitPage() {
  useTitle(UNIT.title);
  const code = useSetupCode();
  const { stage, ask } = useUnit();
  const [note, setNote] = useState('');
  useLandOnHead(stage.is);
  const again = (why = ''): void => {
    setNote(why);
    ask();
  };
  return (
    <div className="narrow">
      <h1 tabIndex={-1}>{UNIT.title}</h1>
      <p className="lead">{UNIT.forWhom}</p>
      <p className="quiet">{UNIT.kept}</p>
      <PlainNote />
      {note !== '' && <p role="alert">{note}</p>}
      {stage.is === 'asking' && <output className="waiting">{DOOR.asking}</output>}
      {stage.is === 'shut' && <Shut says={stage.says} ask={() => again()} />}
      {stage.is === 'there' && <Stage state={stage.state} code={code} ask={again} />}
    </div>
  );
}
