// A code by which a tablet joins: for a new one, or for one that goes on under the id that it had.
import { useState } from 'react';
import type { Role } from '../../api/roles.ts';
import { Select } from '../compose/parts.tsx';
import { Form } from '../door/Form.tsx';
import type { Refused } from '../door/model.ts';
import { useDraft } from '../door/useDraft.ts';
import { Typed } from '../logbook/parts.tsx';
import { useLanding } from '../parts/useLanding.ts';
import { call } from '../sync/wire.ts';
import { UNIT } from './labels.ts';
import { PAIR } from './leadLabels.ts';
import { type Device, labelFault, type Offer } from './model.ts';
import { OfferShown } from './OfferShown.tsx';
import { RoleField } from './RoleField.tsx';
import { recordsOf } from './roles.ts';

interface Draft {
  /** Empty for a new one. */
  readonly device: string;
  readonly label: string;
  readonly role: Role;
}

const NEW: Draft = { device: '', label: '', role: 'observer' };

const faultsOf = ({ label }: Draft) => {
  const fault = labelFault(label);
  return fault === '' ? {} : { label: fault };
};

interface PairingProps {
  readonly devices: readonly Device[];
  readonly load: () => void;
  readonly met: (refused: Refused) => string;
}

interface Offered {
  readonly offer: Offer;
  readonly label: string;
  /** When it ends by this device's own clock. */
  readonly until: number;
  /** As they were when it was made. */
  readonly before: readonly Device[];
}

export function Pairing({ devices, load, met }: PairingProps) {
  const { draft, put, wrong, missing, clear } = useDraft(NEW, faultsOf);
  const { place, land } = useLanding<HTMLHeadingElement>();
  const [offered, setOffered] = useState<Offered>();
  const send = async (): Promise<string> => {
    const { device, label, role } = draft;
    const body = { label: label.trim(), role, ...(device === '' ? {} : { device }) };
    const answer = await call('offer-pairing', { body });
    if (answer.is === 'lost') return UNIT.unsure;
    if (answer.is === 'refused') return met(answer);
    const until = Date.now() + answer.body.seconds * 1000;
    setOffered({ offer: answer.body, label: body.label, until, before: devices });
    return '';
  };
  const choose = (id: string): void => {
    const found = devices.find((device) => device.id === id);
    put(found ? { device: id, label: found.label, role: found.role } : NEW);
  };
  return (
    <section aria-labelledby="unit-pair">
      <h2 id="unit-pair" ref={place} tabIndex={-1}>
        {PAIR.title}
      </h2>
      <p>{PAIR.says}</p>
      {offered ? (
        <OfferShown
          {...offered}
          key={offered.offer.code}
          devices={devices}
          load={load}
          again={send}
          done={() => {
            setOffered(undefined);
            clear();
            land();
          }}
        />
      ) : (
        <Form title={PAIR.form} level={3} press={PAIR.press} missing={missing} send={send}>
          {(tried) => (
            <>
              {devices.length > 0 && (
                <Select
                  label={PAIR.which}
                  hint={PAIR.whichHint}
                  value={draft.device}
                  none={PAIR.fresh}
                  choices={devices.map(({ id, label, revokedAt }) => ({
                    value: id,
                    name: revokedAt === null ? label : PAIR.out(label),
                  }))}
                  set={choose}
                />
              )}
              <Typed
                label={PAIR.label}
                hint={PAIR.labelHint}
                value={draft.label}
                set={(label) => put({ label })}
                wrong={wrong('label', tried)}
              />
              <RoleField
                label={PAIR.role}
                hint={PAIR.records(recordsOf(draft.role))}
                value={draft.role}
                set={(role) => put({ role })}
              />
            </>
          )}
        </Form>
      )}
    </section>
  );
}
