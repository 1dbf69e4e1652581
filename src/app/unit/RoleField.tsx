// A role to be chosen, with what it may do below it.
import { ROLES, type Role } from '../../api/roles.ts';
import { Select } from '../compose/parts.tsx';
import { ROLE } from './leadLabels.ts';

interface RoleFieldProps {
  readonly label: string;
  readonly value: Role;
  readonly set: (role: Role) => void;
  readonly hint: string;
}

const CHOICES = ROLES.map((role) => ({ value: role, name: ROLE[role] }));

export function RoleField({ label, value, set, hint }: RoleFieldProps) {
  return (
    <Select
      label={label}
      value={value}
      choices={CHOICES}
      hint={hint}
      set={(chosen) => {
        const role = ROLES.find((one) => one === chosen);
        if (role) set(role);
      }}
    />
  );
}
