// What the lead finds behind the door: pairing tablets, the devices, the accounts, and their own password.
import type { InsideProps } from '../door/Door.tsx';
import { Accounts } from './Accounts.tsx';
import { Devices } from './Devices.tsx';
import { Own } from './Own.tsx';
import { Pairing } from './Pairing.tsx';
import { useList } from '../door/useList.ts';

export function Lead({ guest, keeper }: InsideProps) {
  const { met } = keeper;
  const devices = useList('list-devices', met);
  return (
    <>
      <Pairing devices={devices.list?.devices ?? []} load={devices.load} met={met} />
      <Devices devices={devices} met={met} />
      <Accounts self={guest.account.id} met={met} />
      <Own guest={guest} keeper={keeper} />
    </>
  );
}
