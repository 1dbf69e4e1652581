// The roles of a unit's people and devices. A person has one; a device has the role of those who record on it, because
// an exit is recorded where there is no network and nobody can be asked.

export const ROLES = ['observer', 'lead', 'stores', 'occupational-health', 'reader'] as const;
export type Role = (typeof ROLES)[number];

/** A device that only reads has nothing to record; everybody else may. */
export const RECORDING_ROLES = [
  'observer',
  'lead',
  'stores',
  'occupational-health',
] as const satisfies readonly Role[];
