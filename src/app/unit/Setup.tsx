// The beginning: the unit and its first lead by the server's code, or the invented unit by one press.
import { useState } from 'react';
import { slugOf } from '../../versions/naming.ts';
import { Field, Form } from '../door/Form.tsx';
import { PASSWORD_RULES } from '../door/labels.ts';
import { type Refused, sentenceOf } from '../door/model.ts';
import { type Drafted, useDraft } from '../door/useDraft.ts';
import { Typed } from '../logbook/parts.tsx';
import { call } from '../sync/wire.ts';
import { Demo } from './Demo.tsx';
import { SETUP, UNIT, WRONG } from './labels.ts';
import {
  knownUnit,
  MOST_ID,
  NO_SETUP,
  type People,
  SETUP_FIELD,
  type SetupDraft,
  setupFaults,
  UNIT_HOUSE,
  type UnitState,
} from './model.ts';

const shortName = (title: string): string => slugOf(title).slice(0, MOST_ID).replace(/-$/, '');

interface FieldsProps {
  readonly drafted: Drafted<SetupDraft>;
  readonly tried: boolean;
}

function UnitFields({ drafted: { draft, put, wrong }, tried }: FieldsProps) {
  const rename = (title: string): void => {
    // The short name follows until it is written by hand.
    const follows = draft.id === shortName(draft.title);
    put({ title, ...(follows ? { id: shortName(title) } : {}) });
  };
  return (
    <>
      <Typed
        label={SETUP.unitTitle}
        hint={SETUP.unitHint}
        value={draft.title}
        set={rename}
        wrong={wrong('title', tried)}
      />
      <Typed
        label={SETUP.id}
        hint={SETUP.idHint}
        value={draft.id}
        set={(id) => put({ id })}
        wrong={wrong('id', tried)}
      />
    </>
  );
}

function LeadFields({ drafted: { draft, put, wrong }, tried }: FieldsProps) {
  return (
    <>
      <Field
        label={SETUP.name}
        hint={SETUP.nameHint}
        value={draft.name}
        set={(name) => put({ name })}
        purpose="username"
        wrong={wrong('name', tried)}
      />
      <Field
        label={SETUP.password}
        hint={PASSWORD_RULES}
        value={draft.password}
        set={(password) => put({ password })}
        purpose="new-password"
        wrong={wrong('password', tried)}
      />
      <Field
        label={SETUP.repeat}
        value={draft.repeat}
        set={(repeat) => put({ repeat })}
        purpose="new-password"
        wrong={wrong('repeat', tried)}
      />
    </>
  );
}

interface SetupProps {
  readonly state: UnitState;
  /** From the address; empty where none was there. */
  readonly code: string;
  /** The unit is made; with whom, for the demonstration. */
  readonly made: (people: People) => void;
  /** Somebody made it before. */
  readonly there: () => void;
}

export function Setup({ state, code, made, there }: SetupProps) {
  const known = knownUnit(state);
  const drafted = useDraft<SetupDraft>({ ...NO_SETUP, ...known, code }, setupFaults);
  const { draft, put, wrong, refuse } = drafted;
  const [tried, setTried] = useState(false);
  const met = (refused: Refused): string => {
    if (refused.is === 'lost') return UNIT.unsure;
    const field = SETUP_FIELD[refused.problem.code];
    if (refused.problem.code === 'already-created') there();
    const says = sentenceOf(UNIT_HOUSE, refused);
    return field ? refuse(field, says) : says;
  };
  const send = async (body: object): Promise<string> => {
    const answer = await call('create-unit', { body });
    if (answer.is !== 'answer') return met(answer);
    made(answer.body.people);
    return '';
  };
  const demo = async (): Promise<string> => {
    setTried(true);
    return draft.code.trim() === '' ? WRONG.code : send({ demo: true, code: draft.code });
  };
  const own = (): object => {
    const { id, title, name, password } = draft;
    return { demo: false, code: draft.code, id, title: title.trim(), name: name.trim(), password };
  };
  return (
    <>
      <div className="fields lined roomy">
        <Typed
          label={SETUP.code}
          hint={code === '' ? SETUP.codeHint : SETUP.codeRead}
          value={draft.code}
          set={(typed) => put({ code: typed })}
          wrong={wrong('code', tried)}
        />
      </div>
      <Form
        title={known ? SETUP.lead : SETUP.own}
        press={known ? SETUP.pressLead : SETUP.press}
        missing={drafted.missing}
        onTry={() => setTried(true)}
        send={async () => send(own())}
      >
        {(sent) => (
          <>
            {!known && <UnitFields drafted={drafted} tried={sent} />}
            <LeadFields drafted={drafted} tried={sent} />
          </>
        )}
      </Form>
      {!known && <Demo make={demo} />}
    </>
  );
}
