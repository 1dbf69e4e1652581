// The tablets that were ever paired: which are in the unit, when they were last heard, and taking one out.
import { type RefObject, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { Refused } from '../door/model.ts';
import { Typed } from '../logbook/parts.tsx';
import { Confirm } from '../parts/Confirm.tsx';
import { clock } from '../sync/ServerSection.tsx';
import { call } from '../sync/wire.ts';
import { UNIT } from './labels.ts';
import { DEVICES, LISTS, ROLE } from './leadLabels.ts';
import { clockOff, type Device, isReason } from './model.ts';
import type { Listed } from '../door/useList.ts';
import { Wrong } from '../parts/Wrong.tsx';

interface TakeOutProps {
  readonly device: Device;
  readonly met: (refused: Refused) => string;
  readonly done: () => void;
  /** Where that is said. */
  readonly told: RefObject<HTMLElement | null>;
}

function TakeOut({ device: { id, label }, met, done, told }: TakeOutProps) {
  const [reason, setReason] = useState('');
  const write = async (): Promise<void> => {
    if (!isReason(reason)) throw new Error(DEVICES.reasonMissing);
    const body = { reason: reason.trim() };
    const answer = await call('revoke-device', { params: { device: id }, body });
    if (answer.is !== 'answer') throw new Error(answer.is === 'lost' ? UNIT.unsure : met(answer));
    done();
  };
  return (
    <Confirm
      label={DEVICES.takeOut(label)}
      title={DEVICES.ask}
      sentence={DEVICES.will(label)}
      main={false}
      act={DEVICES.act}
      write={write}
      then={told}
    >
      <p>{DEVICES.keeps}</p>
      <Typed label={DEVICES.reason} hint={DEVICES.reasonHint} value={reason} set={setReason} />
    </Confirm>
  );
}

const factsOf = ({ role, pairedAt, seenAt, clockOffset }: Device): readonly string[] => {
  const off = clockOff(clockOffset);
  return [
    ROLE[role],
    DEVICES.paired(clock(pairedAt)),
    seenAt === null ? DEVICES.unheard : DEVICES.heard(clock(seenAt)),
    ...(off === undefined ? [] : [DEVICES.clock(off)]),
  ];
};

function DeviceCard(props: TakeOutProps) {
  const { device } = props;
  const { id, label, revokedAt } = device;
  return (
    <li className="record">
      <h3>
        {label}{' '}
        <span className="badge">{revokedAt === null ? DEVICES.inUnit : DEVICES.out(clock(revokedAt))}</span>
      </h3>
      <p>
        {factsOf(device).join(' · ')} <code className="quiet">{id}</code>
      </p>
      {revokedAt === null && (
        <p className="actions">
          <TakeOut {...props} />
        </p>
      )}
    </li>
  );
}

interface DevicesProps {
  readonly devices: Listed<'list-devices'>;
  readonly met: (refused: Refused) => string;
}

export function Devices({ devices: { list, wrong, load }, met }: DevicesProps) {
  const told = useRef<HTMLOutputElement>(null);
  const [said, setSaid] = useState('');
  const card = (device: Device) => (
    <DeviceCard
      key={device.id}
      device={device}
      met={met}
      told={told}
      done={() => {
        setSaid(DEVICES.done(device.label));
        load();
      }}
    />
  );
  const all = list?.devices ?? [];
  const out = all.filter(({ revokedAt }) => revokedAt !== null);
  return (
    <section aria-labelledby="unit-devices">
      <h2 id="unit-devices">{DEVICES.title}</h2>
      <p>{list ? (all.length === 0 ? DEVICES.none : DEVICES.says) : LISTS.asking}</p>
      <Wrong text={wrong} />
      <ul className="records">{all.filter(({ revokedAt }) => revokedAt === null).map(card)}</ul>
      <output ref={told} tabIndex={-1} className="told">
        {said}
      </output>
      {out.length > 0 && (
        <details>
          <summary>{DEVICES.outTitle(out.length)}</summary>
          <ul className="records">{out.map(card)}</ul>
        </details>
      )}
      <p className="actions">
        <Button className="button" onPress={load}>
          {LISTS.again}
        </Button>
      </p>
    </section>
  );
}
